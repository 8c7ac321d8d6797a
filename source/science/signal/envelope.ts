import {analyticTransform, realTransform} from './fourier.ts';
import {bandWeights, powerOfTwoFrom, type SoftBand, weighted} from './spectrumParts.ts';

/**
Envelope of a signal within a soft band, without any delay: the size of the analytic signal.

@param samples - Shape (n).
@param band - Hertz; edges as half cosines over log f.
@returns Shape (n).
@see Bendat & Piersol, Random Data, chapter 13, for the envelope by the Hilbert transform.
*/
export function bandEnvelope(samples: Float64Array, sampleRateHz: number, band: SoftBand): Float64Array {
	const {length, spectrum} = paddedSpectrum(samples);
	const weights = bandWeights(band, length / 2 + 1, sampleRateHz / length);
	const {spectrum: within, power} = analyticTransform(length);
	for (let bin = 1; bin < length / 2; bin += 1) {
		const weight = (2 / length) * weights[bin]!;
		within[2 * bin] = weight * spectrum[2 * bin]!;
		within[2 * bin + 1] = weight * spectrum[2 * bin + 1]!;
	}

	return power().subarray(0, samples.length).map(Math.sqrt);
}

/** A signal within a soft band, without delay. @returns Shape (n). */
export function withinBand(samples: Float64Array, sampleRateHz: number, band: SoftBand): Float64Array {
	const {length, spectrum, transform} = paddedSpectrum(samples);
	const weights = bandWeights(band, length / 2 + 1, sampleRateHz / length);
	return transform.inverse(weighted(spectrum, weights)).subarray(0, samples.length);
}

function paddedSpectrum(samples: Float64Array) {
	const transform = realTransform(powerOfTwoFrom(samples.length));
	const {length} = transform;
	const padded = new Float64Array(length);
	padded.set(samples);
	return {length, transform, spectrum: transform.forward(padded)};
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
