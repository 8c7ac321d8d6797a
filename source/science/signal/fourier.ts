import FFT from 'fft.js';

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

/** The library's tables by the number of complex points, which take longer than a transform. */
const plans = new Map<number, FFT>();

function transformPlan(points: number): FFT {
	let plan = plans.get(points);
	if (!plan) {
		plan = new FFT(points);
		plans.set(points, plan);
	}

	return plan;
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
	const plan = transformPlan(half);
	const packed = new Float64Array(length);
	const turned = new Float64Array(length);
	return {
		length,
		forward(samples, into = new Float64Array(length + 2)) {
			plan.transform(turned, samples);
			unpack(turned, into, cosines, sines);
			return into;
		},
		inverse(spectrum, into = new Float64Array(length)) {
			pack(spectrum, packed, cosines, sines);
			// The way back is the way forth of the conjugate.
			plan.transform(turned, packed);
			const scale = 1 / half;
			for (let index = 0; index < length; index += 2) {
				into[index] = scale * turned[index]!;
				into[index + 1] = -scale * turned[index + 1]!;
			}

			return into;
		},
	};
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
	/** Shape (2n): the spectrum, real and imaginary parts by turns, to be filled before each call; anything stands there after it. */
	readonly spectrum: Float64Array;
	/** @returns Shape (n): |Σ X(k)·e^(2πjkt/n)|², unscaled. */
	readonly power: () => Float64Array;
};

/** @param length - n, a power of two ≥ 2. */
export function analyticTransform(length: number): AnalyticTransform {
	const plan = transformPlan(length);
	const spectrum = new Float64Array(2 * length);
	const back = new Float64Array(2 * length);
	return {
		spectrum,
		power() {
			// The way back is the way forth of the conjugate, and a conjugate has the same size.
			for (let index = 1; index < spectrum.length; index += 2) spectrum[index] = -spectrum[index]!;
			plan.transform(back, spectrum);
			const powers = new Float64Array(length);
			for (let index = 0; index < length; index += 1)
				powers[index] = back[2 * index]! * back[2 * index]! + back[2 * index + 1]! * back[2 * index + 1]!;
			return powers;
		},
	};
}

/** Bins of the real signal from those of its packed halves: X(k) = E(k) + e^(−2πjk/n)·O(k). */
function unpack(packed: Float64Array, into: Float64Array, cosines: Float64Array, sines: Float64Array): void {
	const length = packed.length;
	into[0] = packed[0]! + packed[1]!;
	into[1] = 0;
	into[length] = packed[0]! - packed[1]!;
	into[length + 1] = 0;
	for (let at = 2; at <= length / 2; at += 2) {
		const mirror = length - at;
		const c = cosines[at / 2]!;
		const s = sines[at / 2]!;
		const evenReal = (packed[at]! + packed[mirror]!) / 2;
		const evenImaginary = (packed[at + 1]! - packed[mirror + 1]!) / 2;
		const oddReal = (packed[at + 1]! + packed[mirror + 1]!) / 2;
		const oddImaginary = (packed[mirror]! - packed[at]!) / 2;
		const turnedReal = c * oddReal + s * oddImaginary;
		const turnedImaginary = c * oddImaginary - s * oddReal;
		into[at] = evenReal + turnedReal;
		into[at + 1] = evenImaginary + turnedImaginary;
		into[mirror] = evenReal - turnedReal;
		into[mirror + 1] = turnedImaginary - evenImaginary;
	}
}

/** The conjugate of the packed halves from the bins of a real signal. */
function pack(
	spectrum: Float64Array,
	packed: Float64Array,
	cosines: Float64Array,
	sines: Float64Array,
): void {
	const length = packed.length;
	packed[0] = (spectrum[0]! + spectrum[length]!) / 2;
	packed[1] = -(spectrum[0]! - spectrum[length]!) / 2;
	for (let at = 2; at <= length / 2; at += 2) {
		const mirror = length - at;
		const a = spectrum[at]!;
		const b = spectrum[at + 1]!;
		const c = spectrum[mirror]!;
		const d = spectrum[mirror + 1]!;
		const cosine = cosines[at / 2]!;
		const sine = sines[at / 2]!;
		const evenReal = (a + c) / 2;
		const evenImaginary = (b - d) / 2;
		const turnedReal = (a - c) / 2;
		const turnedImaginary = (b + d) / 2;
		const oddReal = turnedReal * cosine - turnedImaginary * sine;
		const oddImaginary = turnedReal * sine + turnedImaginary * cosine;
		packed[at] = evenReal - oddImaginary;
		packed[at + 1] = -(evenImaginary + oddReal);
		packed[mirror] = evenReal + oddImaginary;
		packed[mirror + 1] = evenImaginary - oddReal;
	}
}
