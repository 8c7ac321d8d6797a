/** The straight part of a decay and the noise that it ends in, in steps of a power. */
export type DecayLine = {
	readonly rangeDb: number;
	/** Mean power of the noise. */
	readonly noise: number;
	/** Step at which the line meets the noise. */
	readonly meets: number;
	/** Last step at which the line lies 10 dB above the noise. */
	readonly clearUntil: number;
	/** Energy of the decay beyond the step where it meets the noise. */
	readonly lost: number;
};

/** The line is drawn down to here above the noise, dB: nearer, the noise bends it. */
const drawnToDb = 7;
/** Noise counts from where the decay lies this far below it, dB. */
const silentBelowLineDb = 10;
const rounds = 5;

/**
The noise and the line by turns: the line where the power stands out of the noise, the noise where the line has gone under.

@param powers - From the arrival on; the last fifth holds noise only.
@param smoothing - Steps over which powers are averaged.
@returns `undefined` for silence and for what does not fall.
@see A. Lundeby, T. E. Vigran, H. Bietz, M. Vorländer, Uncertainties of measurements in room acoustics, Acustica 81 (1995) 344.
*/
export function decayLine(powers: Float64Array, smoothing: number): DecayLine | undefined {
	const count = powers.length;
	const sums = new Float64Array(count + 1);
	for (let index = 0; index < count; index += 1) sums[index + 1] = sums[index]! + powers[index]!;
	const mean = (from: number, to: number) => (sums[to]! - sums[from]!) / Math.max(1, to - from);
	const smooth = Float64Array.from(powers, (_, index) => {
		const from = Math.max(0, index - Math.floor(smoothing / 2));
		return mean(from, Math.min(count, from + smoothing));
	});
	let top = 0;
	for (let index = 0; index < count; index += 1) if (smooth[index]! > smooth[top]!) top = index;
	let noise = mean(Math.floor(0.8 * count), count);
	if (!(smooth[top]! > noise)) return undefined;
	let end = top;
	// Beats may dip into the noise; where the mean of three stretches stays there, the decay is over.
	while (end < count && mean(end, Math.min(count, end + 3 * smoothing)) > 4 * noise) end += 1;
	let line = lineThrough(smooth, noise, top, end);
	for (let round = 0; round < rounds && line; round += 1) {
		const {slope, at} = line;
		// Steps until the line has come to a power.
		const stepAt = (power: number) => (Math.log(power) - at) / slope;
		const silent = Math.ceil(stepAt(noise * 10 ** (-silentBelowLineDb / 10)));
		const tail = Math.min(silent, Math.floor(0.9 * count));
		if (tail > top) noise = mean(tail, count);
		const drawn = Math.min(count, Math.floor(stepAt(noise * 10 ** (drawnToDb / 10))));
		line = drawn > top + smoothing ? lineThrough(smooth, noise, top, drawn) : undefined;
	}

	const rangeDb = 10 * Math.log10(smooth[top]! / Math.max(noise, 1e-300));
	if (!line) return {rangeDb, noise, meets: count, clearUntil: -1, lost: 0};
	const {slope, at} = line;
	const stepAt = (power: number) => (Math.log(Math.max(power, 1e-300)) - at) / slope;
	const meets = Math.max(top, Math.min(count, Math.round(stepAt(noise))));
	return {
		rangeDb,
		noise,
		meets,
		clearUntil: stepAt(10 * noise),
		lost: Math.exp(at + slope * meets) / -slope,
	};
}

/** Least squares through the logarithms of what lies above the noise; `undefined` where it does not fall. */
function lineThrough(
	smooth: Float64Array,
	noise: number,
	from: number,
	to: number,
): {readonly slope: number; readonly at: number} | undefined {
	let [count, x, y, xx, xy] = [0, 0, 0, 0, 0];
	for (let index = from; index < to; index += 1) {
		const above = smooth[index]! - noise;
		if (!(above > 0)) continue;
		const log = Math.log(above);
		count += 1;
		x += index;
		y += log;
		xx += index * index;
		xy += index * log;
	}

	const slope = (count * xy - x * y) / (count * xx - x * x);
	return count > 2 && slope < 0 ? {slope, at: (y - slope * x) / count} : undefined;
}
