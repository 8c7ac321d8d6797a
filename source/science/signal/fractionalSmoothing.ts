/**
Fractional-octave smoothing: the mean power over f·2^(±1/(2n)), each point weighted by the width of frequency it
stands for on a logarithmic axis, so that the grid's own density does not matter.

@param frequenciesHz - Shape (m), hertz, ascending, > 0.
@param levelsDb - Shape (m), dB.
@param perOctave - n, such as 3 or 24; > 0.
@returns Shape (m), dB.
@see Hatziantoniou & Mourjopoulos, J. Audio Eng. Soc. 48 (2000) 259, rectangular window on log f.
*/
export function fractionalSmoothing(
	frequenciesHz: ArrayLike<number>,
	levelsDb: ArrayLike<number>,
	perOctave: number,
): Float64Array {
	const count = frequenciesHz.length;
	const logs = Float64Array.from(frequenciesHz, value => Math.log2(value));
	// The integral of power over log f up to each edge between points; points are cells whose edges lie half way.
	const edges = new Float64Array(count + 1);
	const sums = new Float64Array(count + 1);
	for (let index = 0; index <= count; index += 1) {
		if (count === 1) edges[index] = logs[0]! + index - 0.5;
		else if (index === 0) edges[0] = logs[0]! - (logs[1]! - logs[0]!) / 2;
		else if (index === count) edges[count] = logs[count - 1]! + (logs[count - 1]! - logs[count - 2]!) / 2;
		else edges[index] = (logs[index - 1]! + logs[index]!) / 2;
	}

	for (let index = 0; index < count; index += 1)
		sums[index + 1] = sums[index]! + 10 ** (levelsDb[index]! / 10) * (edges[index + 1]! - edges[index]!);

	let at = 0;
	const integralTo = (log: number): number => {
		while (at < count && edges[at + 1]! <= log) at += 1;
		while (at > 0 && edges[at]! > log) at -= 1;
		if (at >= count) return sums[count]!;
		return sums[at]! + 10 ** (levelsDb[at]! / 10) * Math.max(0, log - edges[at]!);
	};

	const half = 1 / (2 * perOctave);
	const smoothed = new Float64Array(count);
	for (let index = 0; index < count; index += 1) {
		const from = Math.max(edges[0]!, logs[index]! - half);
		const to = Math.min(edges[count]!, logs[index]! + half);
		smoothed[index] =
			to > from ? 10 * Math.log10((integralTo(to) - integralTo(from)) / (to - from)) : levelsDb[index]!;
	}

	return smoothed;
}
