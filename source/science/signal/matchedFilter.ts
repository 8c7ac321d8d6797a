import {analyticTransform, realTransform} from './fourier.ts';
import {powerOfTwoFrom} from './spectrumParts.ts';

/** Correlation of blocks of one length with a template that holds nothing above some frequency. */
export type MatchedFilter = {
	/** Length of a block, samples, a power of two. */
	readonly length: number;
	/** One value of the correlation stands for so many samples. */
	readonly every: number;
	/**
	Envelope of Σ block(n + lag)·template(n), which does not turn with the phase of what lies at a lag.

	@returns Shape (length / every): at lags of 0, `every`, …; what would need samples behind the block's end wraps around.
	*/
	readonly correlate: (block: Float64Array) => Float64Array;
};

/**
A matched filter whose result is taken at as few samples as the template's band asks for.

@param template - Shape (m).
@param highestHertz - What the template holds no more of.
@param leastLength - Blocks hold at least so many samples.
@see G. L. Turin, An introduction to matched filters, IRE Trans. Inf. Theory 6 (1960) 311.
*/
export function matchedFilter(
	template: Float64Array,
	sampleRateHz: number,
	highestHertz: number,
	leastLength: number,
): MatchedFilter {
	const length = powerOfTwoFrom(Math.max(template.length, leastLength));
	let every = 1;
	// An envelope has no negative frequencies: as many values a second as the band is wide would do.
	while (sampleRateHz / (2 * every) > 1.4 * highestHertz && length / (2 * every) >= 4) every *= 2;
	const transform = realTransform(length);
	const padded = new Float64Array(length);
	padded.set(template);
	const conjugate = transform.forward(padded).map(value => (2 * value) / length);
	const spectrum = new Float64Array(length + 2);
	const kept = length / every;
	const {spectrum: product, power: powerOf} = analyticTransform(kept);
	return {
		length,
		every,
		correlate(block) {
			transform.forward(block, spectrum);
			product.fill(0);
			for (let bin = 1; bin < Math.min(kept, length / 2); bin += 1) {
				const a = spectrum[2 * bin]!;
				const b = spectrum[2 * bin + 1]!;
				const c = conjugate[2 * bin]!;
				const d = conjugate[2 * bin + 1]!;
				product[2 * bin] = a * c + b * d;
				product[2 * bin + 1] = b * c - a * d;
			}

			const power = powerOf();
			for (let index = 0; index < kept; index += 1) power[index] = Math.sqrt(power[index]!);
			return power;
		},
	};
}
