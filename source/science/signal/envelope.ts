import {forwardReal, inverseReal, realTransform} from './fourier.ts';
import {bandWeights, powerOfTwoFrom, type SoftBand, weighted} from './spectrumParts.ts';

/**
A signal within a soft band, without any delay, and its envelope: the size of the analytic signal.

@param samples - Shape (n).
@param band - Hertz; edges as half cosines over log f.
@returns Both shape (n).
@see Bendat & Piersol, Random Data, chapter 13, for the envelope by the Hilbert transform.
*/
export function bandEnvelope(
	samples: Float64Array,
	sampleRateHz: number,
	band: SoftBand,
): {readonly signal: Float64Array; readonly envelope: Float64Array} {
	const length = powerOfTwoFrom(samples.length);
	const padded = new Float64Array(length);
	padded.set(samples);
	const weights = bandWeights(band, length / 2 + 1, sampleRateHz / length);
	const within = weighted(forwardReal(padded), weights);
	const signal = inverseReal(within).subarray(0, samples.length);
	// A quarter turn of every bin: (a + jb)·(−j) = b − ja.
	for (let index = 0; index < within.length; index += 2) {
		const real = within[index]!;
		within[index] = within[index + 1]!;
		within[index + 1] = -real;
	}

	const turned = inverseReal(within);
	const envelope = new Float64Array(samples.length);
	for (let index = 0; index < envelope.length; index += 1)
		envelope[index] = Math.hypot(signal[index]!, turned[index]!);
	return {signal, envelope};
}

/** A signal within a soft band, without delay. @returns Shape (n). */
export function withinBand(samples: Float64Array, sampleRateHz: number, band: SoftBand): Float64Array {
	return bandSplitter(samples, sampleRateHz)(band);
}

/** Many bands of one signal, which is brought to frequency once. @returns From a soft band to shape (n), without delay. */
export function bandSplitter(samples: Float64Array, sampleRateHz: number): (band: SoftBand) => Float64Array {
	const transform = realTransform(powerOfTwoFrom(samples.length));
	const {length} = transform;
	const padded = new Float64Array(length);
	padded.set(samples);
	const spectrum = transform.forward(padded);
	return band =>
		transform
			.inverse(weighted(spectrum, bandWeights(band, length / 2 + 1, sampleRateHz / length)))
			.subarray(0, samples.length);
}

/**
Place of a peak between samples, by a parabola through it and its neighbours.

@returns Offset from the index, −0.5 to 0.5; 0 at the ends and where the top is flat.
*/
export function peakOffset(samples: ArrayLike<number>, index: number): number {
	if (index <= 0 || index >= samples.length - 1) return 0;
	const before = samples[index - 1]!;
	const here = samples[index]!;
	const after = samples[index + 1]!;
	const bend = before - 2 * here + after;
	if (!(bend < 0)) return 0;
	return Math.max(-0.5, Math.min(0.5, (0.5 * (before - after)) / bend));
}
