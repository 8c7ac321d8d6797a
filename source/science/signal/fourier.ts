import FFT from 'fft.js';

const transforms = new Map<number, FFT>();

/** Transforms of one length, made once: the tables of long ones take longer than a transform. */
function transformOf(length: number): FFT {
	let transform = transforms.get(length);
	if (!transform) {
		transform = new FFT(length);
		transforms.set(length, transform);
	}

	return transform;
}

/**
Fourier transform of a real signal.

@param samples - Shape (n), n a power of two ≥ 4.
@returns Shape (n + 2): real and imaginary part of bins 0…n/2 by turns, unscaled.
@throws {Error} If n is no power of two.
*/
export function forwardReal(samples: Float64Array): Float64Array {
	const spectrum = new Float64Array(2 * samples.length);
	transformOf(samples.length).realTransform(spectrum, samples);
	return spectrum.subarray(0, samples.length + 2);
}

/**
Real signal from its spectrum, by one complex transform of half the length.

@param spectrum - Shape (n + 2): real and imaginary part of bins 0…n/2 by turns, n a power of two ≥ 4.
@returns Shape (n): what `forwardReal` turns into that spectrum.
@throws {Error} If n is no power of two.
@see Press et al., Numerical Recipes, 2nd ed., section 12.3, the way back of the packed transform.
*/
export function inverseReal(spectrum: Float64Array): Float64Array {
	const half = spectrum.length / 2 - 1;
	const packed = new Float64Array(2 * half);
	const step = Math.PI / half;
	for (let k = 0; k < half; k += 1) {
		const mirror = half - k;
		const evenReal = (spectrum[2 * k]! + spectrum[2 * mirror]!) / 2;
		const evenImaginary = (spectrum[2 * k + 1]! - spectrum[2 * mirror + 1]!) / 2;
		const oddReal = (spectrum[2 * k]! - spectrum[2 * mirror]!) / 2;
		const oddImaginary = (spectrum[2 * k + 1]! + spectrum[2 * mirror + 1]!) / 2;
		if (evenReal === 0 && evenImaginary === 0 && oddReal === 0 && oddImaginary === 0) continue;
		const cosine = Math.cos(step * k);
		const sine = Math.sin(step * k);
		packed[2 * k] = evenReal - oddReal * sine - oddImaginary * cosine;
		packed[2 * k + 1] = evenImaginary + oddReal * cosine - oddImaginary * sine;
	}

	// Even samples come out as real parts, odd ones as imaginary parts: the order of the signal itself.
	const samples = new Float64Array(2 * half);
	transformOf(half).inverseTransform(samples, packed);
	return samples;
}
