import {type RealTransform, realTransform} from './fourier.ts';
import {bandWeight, type SoftBand} from './spectrumParts.ts';

/** A reference turned into what divides by it. */
export type SweepDivider = {
	/** Length of the transform, samples. */
	readonly length: number;
	/** Shape (length + 2): conj(X)/(|X|² + ε), within the band. */
	readonly spectrum: Float64Array;
};

/** Regularisation as a share of the reference's power at its strongest within each octave of a sweep. */
const regularisation = 1e-4;

/**
Makes a divider from what was played, so that a recording divided by it gives the impulse response.

The power of an exponential sweep falls with 1/f, so that the regularisation does too: ε(f) = 1e-4 · the median of
|X|²·f over the band, divided by f. Outside the band nothing passes.

@param reference - Shape (n), n a power of two: what was played, as the recorder would sample it.
@param band - Where the reference holds enough, hertz.
@see Tohyama, Koike; Kirkeby & Nelson, J. Audio Eng. Soc. 47 (1999) 583, for regularised inversion by frequency.
*/
export function dividerOf(
	reference: Float64Array,
	sampleRateHz: number,
	band: SoftBand,
	transform: RealTransform = realTransform(reference.length),
): SweepDivider {
	const spectrum = transform.forward(reference);
	const length = reference.length;
	const binHertz = sampleRateHz / length;
	const bins = length / 2 + 1;
	const first = Math.max(1, Math.floor(band[0] / binHertz));
	const last = Math.min(bins - 1, Math.ceil(band[3] / binHertz));
	let sum = 0;
	let count = 0;
	for (let bin = first; bin <= last; bin += 97) {
		const hertz = bin * binHertz;
		if (hertz < band[1] || hertz > band[2]) continue;
		sum += (spectrum[2 * bin]! ** 2 + spectrum[2 * bin + 1]! ** 2) * hertz;
		count += 1;
	}

	const strength = sum / Math.max(1, count);
	const result = new Float64Array(length + 2);
	for (let bin = first; bin <= last; bin += 1) {
		const hertz = bin * binHertz;
		const real = spectrum[2 * bin]!;
		const imaginary = spectrum[2 * bin + 1]!;
		const scale =
			bandWeight(band, hertz) / (real * real + imaginary * imaginary + (regularisation * strength) / hertz);
		result[2 * bin] = real * scale;
		result[2 * bin + 1] = -imaginary * scale;
	}

	return {length, spectrum: result};
}

/**
Impulse response of all that lies between file and recording.

@param recorded - Shape (n ≤ divider's length); zeros are put behind it.
@param transform - Of the divider's length; to share its memory among many.
@returns Shape (divider's length): sample 0 is no delay, the end holds what comes early, such as products of harmonics.
@throws {RangeError} If the recording is longer than the divider.
*/
export function divide(
	recorded: Float64Array,
	divider: SweepDivider,
	transform: RealTransform = realTransform(divider.length),
): Float64Array {
	const {length} = divider;
	if (recorded.length > length)
		throw new RangeError(`recorded must hold at most ${length} samples, got ${recorded.length}`);
	let padded = recorded;
	if (recorded.length < length) {
		padded = new Float64Array(length);
		padded.set(recorded);
	}

	const spectrum = transform.forward(padded);
	const by = divider.spectrum;
	for (let index = 0; index < by.length; index += 2) {
		const a = spectrum[index]!;
		const b = spectrum[index + 1]!;
		const c = by[index]!;
		const d = by[index + 1]!;
		spectrum[index] = a * c - b * d;
		spectrum[index + 1] = a * d + b * c;
	}

	return transform.inverse(spectrum, padded === recorded ? undefined : padded);
}
