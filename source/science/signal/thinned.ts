/**
A signal at a lower rate, for what lies far below it: each value is a mean over twice as many samples, weighted by a triangle,
so that what folds back to a frequency f comes down by about (f / new rate)⁴ in power.

@param every - Samples for one, ≥ 1.
*/
export function thinned(samples: Float64Array, every: number): Float64Array {
	const result = new Float64Array(Math.ceil(samples.length / every));
	const scale = 1 / every ** 2;
	for (let place = 0; place < result.length; place += 1) {
		const middle = place * every;
		const least = Math.max(-every + 1, -middle);
		const most = Math.min(every - 1, samples.length - 1 - middle);
		let sum = 0;
		for (let away = least; away < 0; away += 1) sum += (every + away) * samples[middle + away]!;
		for (let away = 0; away <= most; away += 1) sum += (every - away) * samples[middle + away]!;
		result[place] = scale * sum;
	}

	return result;
}
