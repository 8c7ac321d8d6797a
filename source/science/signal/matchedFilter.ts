import {type RealTransform, realTransform} from './fourier.ts';
import {powerOfTwoFrom} from './spectrumParts.ts';

/** Correlation of blocks of one length with a template that holds nothing above some frequency. */
export type MatchedFilter = {
	/** Length of a block, samples, a power of two. */
	readonly length: number;
	/** One value of the correlation stands for so many samples. */
	readonly every: number;
	/** @returns Shape (length / every): Σ block(n + lag)·template(n) at lags of 0, `every`, …; the last template's length wraps around. */
	readonly correlate: (block: Float64Array, into?: Float64Array) => Float64Array;
};

/**
A matched filter whose result is taken at as few samples as the template's band asks for.

@param template - Shape (m).
@param highestHertz - What the template holds no more of.
@param leastLength - Blocks hold at least so many samples.
*/
export function matchedFilter(
	template: Float64Array,
	sampleRateHz: number,
	highestHertz: number,
	leastLength: number,
): MatchedFilter {
	const length = powerOfTwoFrom(Math.max(template.length, leastLength));
	let every = 1;
	while (sampleRateHz / (2 * every) > 2.5 * highestHertz && length / (2 * every) >= 4) every *= 2;
	const forth = realTransform(length);
	const back: RealTransform = every === 1 ? forth : realTransform(length / every);
	const padded = new Float64Array(length);
	padded.set(template);
	const conjugate = forth.forward(padded);
	const spectrum = new Float64Array(length + 2);
	const kept = new Float64Array(back.length + 2);
	return {
		length,
		every,
		correlate(block, into) {
			forth.forward(block, spectrum);
			// The last bin would be its own mirror image.
			for (let index = 0; index < back.length; index += 2) {
				const a = spectrum[index]!;
				const b = spectrum[index + 1]!;
				const c = conjugate[index]! / every;
				const d = conjugate[index + 1]! / every;
				kept[index] = a * c + b * d;
				kept[index + 1] = b * c - a * d;
			}

			return back.inverse(kept, into);
		},
	};
}
