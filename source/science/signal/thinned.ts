/**
A signal at a lower rate, for what lies far below it: each value is a mean over twice as many samples, weighted by a triangle,
so that what folds back to a frequency f comes down by about (f / new rate)⁴ in power.

@param every - Samples for one, ≥ 1.
*/
export function thinned(samples: Float64Array, every: number): Float64Array {
	const result = new Float64Array(Math.ceil(samples.length / every));
	const scale = 1 / every ** 2;
	// A triangle rises over the samples before a value and falls over those from it on: each sample counts for two values.
	let rising = 0;
	for (let place = 0; place < result.length; place += 1) {
		const first = place * every;
		const count = Math.min(every, samples.length - first);
		let sum = 0;
		let ramp = 0;
		for (let away = 0; away < count; away += 1) {
			const sample = samples[first + away]!;
			sum += sample;
			ramp += away * sample;
		}

		result[place] = scale * (rising + every * sum - ramp);
		rising = ramp;
	}

	return result;
}
