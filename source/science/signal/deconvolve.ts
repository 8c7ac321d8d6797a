import {type RealTransform, realTransform} from './fourier.ts';
import {bandWeight, powerOfTwoFrom, type SoftBand} from './spectrumParts.ts';

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

/** Divides recordings of one sweep and gives the part of the impulse response that is wanted. */
export type PartDivider = {
	/** Samples of a recording that it takes at most. */
	readonly longest: number;
	/** @returns Shape (length): what `divide` gives from sample `first` on. */
	readonly divide: (recorded: Float64Array) => Float64Array;
};

/**
A divider for a part of the impulse response alone: recording and response are taken in blocks of one length, each of the
recording multiplied by the spectrum of that stretch of the divider which leads from it to a block of the response. The values
are those of `divide`; a sweep is long and its response short, so that short transforms do, which stay in a processor's cache.

@param first - First sample that is wanted, may be negative.
@param length - How many.
@param longest - Samples of a recording, at most the divider's length.
@see T. G. Stockham, High-speed convolution and correlation, AFIPS 28 (1966) 229, for the sectioning.
*/
export function partDivider(
	{length: whole, spectrum}: SweepDivider,
	first: number,
	length: number,
	longest: number,
): PartDivider {
	const inverse = realTransform(whole).inverse(spectrum);
	// The whole is a power of two: its lowest bits are the place, from either end.
	const around = whole - 1;
	const block = Math.min(whole / 2, powerOfTwoFrom(length) / 2);
	const transform = realTransform(2 * block);
	const goals = Math.ceil(length / block);
	const sections = Math.ceil(longest / block);
	// By how many blocks the recording's lies behind the response's, from the most negative on.
	const stretches = Array.from({length: sections + goals - 1}, (_, place) => {
		const from = first - (place - goals + 1) * block - (block - 1);
		const samples = new Float64Array(2 * block);
		for (let index = 0; index < samples.length; index += 1)
			samples[index] = inverse[(from + index) & around]!;
		return transform.forward(samples);
	});
	const samples = new Float64Array(2 * block);
	const part = new Float64Array(2 * block + 2);
	const sums = Array.from({length: goals}, () => new Float64Array(2 * block + 2));
	return {
		longest,
		divide(recorded) {
			if (recorded.length > longest)
				throw new RangeError(`recorded must hold at most ${longest} samples, got ${recorded.length}`);
			for (const sum of sums) sum.fill(0);
			for (let section = 0; section * block < recorded.length; section += 1) {
				const own = recorded.subarray(section * block, (section + 1) * block);
				samples.fill(0, own.length);
				samples.set(own);
				transform.forward(samples, part);
				for (let goal = 0; goal < goals; goal += 1)
					addProduct(sums[goal]!, part, stretches[section - goal + goals - 1]!);
			}

			const result = new Float64Array(length);
			for (const [goal, sum] of sums.entries())
				result.set(
					transform
						.inverse(sum, samples)
						.subarray(block - 1, block - 1 + Math.min(block, length - goal * block)),
					goal * block,
				);
			return result;
		},
	};
}

function addProduct(sum: Float64Array, one: Float64Array, other: Float64Array): void {
	for (let index = 0; index < sum.length; index += 2) {
		const a = one[index]!;
		const b = one[index + 1]!;
		const c = other[index]!;
		const d = other[index + 1]!;
		sum[index] = sum[index]! + a * c - b * d;
		sum[index + 1] = sum[index + 1]! + a * d + b * c;
	}
}
