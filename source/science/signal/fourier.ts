import {complexTransform, complexTransformOf} from './complexTransform.ts';

/** Cosines and sines of a quarter turn: shape (n/4 + 1) each, of 2πk/n. */
type Quarter = {readonly cosines: Float64Array; readonly sines: Float64Array};

/** Tables by the length of the transform: powers of two up to 2^23, so that there are few. */
const quarters = new Map<number, Quarter>();

function quarterOf(length: number): Quarter {
	let quarter = quarters.get(length);
	if (!quarter) {
		const cosines = new Float64Array(length / 4 + 1);
		const sines = new Float64Array(length / 4 + 1);
		for (let k = 0; k <= length / 4; k += 1) {
			cosines[k] = Math.cos((2 * Math.PI * k) / length);
			sines[k] = Math.sin((2 * Math.PI * k) / length);
		}

		quarter = {cosines, sines};
		quarters.set(length, quarter);
	}

	return quarter;
}

/** Transforms of one length that share their working memory: for many of them in a row. */
export type RealTransform = {
	readonly length: number;
	/** @returns Shape (n + 2): real and imaginary part of bins 0…n/2 by turns, unscaled. */
	readonly forward: (samples: Float64Array, into?: Float64Array) => Float64Array;
	/** @returns Shape (n): what `forward` turns into that spectrum. */
	readonly inverse: (spectrum: Float64Array, into?: Float64Array) => Float64Array;
};

/**
Fourier transform of real signals by a complex one of half the length, even samples as real and odd ones as imaginary parts.

@param length - n, a power of two ≥ 4.
@throws {RangeError} If n is no power of two.
@see Press et al., Numerical Recipes, 2nd ed., section 12.3, for the packing.
*/
export function realTransform(length: number): RealTransform {
	if (!(length >= 4 && Number.isInteger(Math.log2(length))))
		throw new RangeError(`length must be a power of two ≥ 4, got ${length}`);
	const half = length / 2;
	const {cosines, sines} = quarterOf(length);
	const parts = [0, 1, 2, 3].map(() => new Float64Array(half)) as readonly Float64Array[] as Workspace;
	const halves = (samples: Float64Array) =>
		half < 4
			? complexTransform(split(samples, parts), cosines, sines)
			: complexTransformOf(samples, parts, cosines, sines);
	return {
		length,
		forward(samples, into = new Float64Array(length + 2)) {
			unpack(halves(samples), into, cosines, sines);
			return into;
		},
		inverse(spectrum, into = new Float64Array(length)) {
			const [real, imaginary] = parts;
			pack(spectrum, real, imaginary, cosines, sines);
			// The way back is the way forth of the conjugate.
			const [backReal, backImaginary] = complexTransform(parts, cosines, sines);
			const scale = 1 / half;
			for (let index = 0; index < half; index += 1) {
				into[2 * index] = scale * backReal[index]!;
				into[2 * index + 1] = -scale * backImaginary[index]!;
			}

			return into;
		},
	};
}

type Workspace = readonly [Float64Array, Float64Array, Float64Array, Float64Array];

function split(samples: Float64Array, parts: Workspace): Workspace {
	for (let index = 0; index < parts[0].length; index += 1) {
		parts[0][index] = samples[2 * index]!;
		parts[1][index] = samples[2 * index + 1]!;
	}

	return parts;
}

/**
Fourier transform of a real signal.

@param samples - Shape (n), n a power of two ≥ 4.
@returns Shape (n + 2): real and imaginary part of bins 0…n/2 by turns, unscaled.
@throws {RangeError} If n is no power of two.
*/
export function forwardReal(samples: Float64Array): Float64Array {
	return realTransform(samples.length).forward(samples);
}

/**
Real signal from its spectrum.

@param spectrum - Shape (n + 2): real and imaginary part of bins 0…n/2 by turns, n a power of two ≥ 4.
@returns Shape (n): what `forwardReal` turns into that spectrum.
@throws {RangeError} If n is no power of two.
*/
export function inverseReal(spectrum: Float64Array): Float64Array {
	return realTransform(spectrum.length - 2).inverse(spectrum);
}

/** Spectra of one length brought to the power of their analytic signals, with one working memory. */
export type AnalyticTransform = {
	/** Shape (n) each: the spectrum, to be filled before each call; anything stands in them after it. */
	readonly real: Float64Array;
	readonly imaginary: Float64Array;
	/** @returns Shape (n): |Σ X(k)·e^(2πjkt/n)|², unscaled, in memory that the next call writes over. */
	readonly power: () => Float64Array;
};

/** @param length - n, a power of two ≥ 2. */
export function analyticTransform(length: number): AnalyticTransform {
	const {cosines, sines} = quarterOf(2 * length);
	const parts = [0, 1, 2, 3].map(() => new Float64Array(length)) as readonly Float64Array[] as Workspace;
	const [real, imaginary] = parts;
	return {
		real,
		imaginary,
		power() {
			// The way back is the way forth of the conjugate, and a conjugate has the same size.
			for (let index = 0; index < length; index += 1) imaginary[index] = -imaginary[index]!;
			const [a, b] = complexTransform(parts, cosines, sines);
			for (let index = 0; index < length; index += 1)
				a[index] = a[index]! * a[index]! + b[index]! * b[index]!;
			return a;
		},
	};
}

/** Bins of the real signal from those of its packed halves: X(k) = E(k) + e^(−2πjk/n)·O(k). */
function unpack(
	[real, imaginary]: readonly [Float64Array, Float64Array],
	into: Float64Array,
	cosines: Float64Array,
	sines: Float64Array,
): void {
	const half = real.length;
	into[0] = real[0]! + imaginary[0]!;
	into[1] = 0;
	into[2 * half] = real[0]! - imaginary[0]!;
	into[2 * half + 1] = 0;
	for (let k = 1; k <= half / 2; k += 1) {
		const mirror = half - k;
		const evenReal = (real[k]! + real[mirror]!) / 2;
		const evenImaginary = (imaginary[k]! - imaginary[mirror]!) / 2;
		const oddReal = (imaginary[k]! + imaginary[mirror]!) / 2;
		const oddImaginary = (real[mirror]! - real[k]!) / 2;
		const turnedReal = cosines[k]! * oddReal + sines[k]! * oddImaginary;
		const turnedImaginary = cosines[k]! * oddImaginary - sines[k]! * oddReal;
		into[2 * k] = evenReal + turnedReal;
		into[2 * k + 1] = evenImaginary + turnedImaginary;
		into[2 * mirror] = evenReal - turnedReal;
		into[2 * mirror + 1] = turnedImaginary - evenImaginary;
	}
}

/** The conjugate of the packed halves from the bins of a real signal. */
function pack(
	spectrum: Float64Array,
	real: Float64Array,
	imaginary: Float64Array,
	cosines: Float64Array,
	sines: Float64Array,
): void {
	const half = real.length;
	real[0] = (spectrum[0]! + spectrum[2 * half]!) / 2;
	imaginary[0] = -(spectrum[0]! - spectrum[2 * half]!) / 2;
	for (let k = 1; k <= half / 2; k += 1) {
		const mirror = half - k;
		const a = spectrum[2 * k]!;
		const b = spectrum[2 * k + 1]!;
		const c = spectrum[2 * mirror]!;
		const d = spectrum[2 * mirror + 1]!;
		const evenReal = (a + c) / 2;
		const evenImaginary = (b - d) / 2;
		const turnedReal = (a - c) / 2;
		const turnedImaginary = (b + d) / 2;
		const oddReal = turnedReal * cosines[k]! - turnedImaginary * sines[k]!;
		const oddImaginary = turnedReal * sines[k]! + turnedImaginary * cosines[k]!;
		real[k] = evenReal - oddImaginary;
		imaginary[k] = -(evenImaginary + oddReal);
		real[mirror] = evenReal + oddImaginary;
		imaginary[mirror] = evenImaginary - oddReal;
	}
}
