import FFT from 'fft.js';
import {playerRate} from './listening.ts';

// Figures of a noise-free impulse response, by the test's own transform and filters: what the product's are held against.

type Spectrum = {readonly parts: number[]; readonly size: number};

function spectrumOf(impulse: Float64Array): Spectrum {
	const size = 2 ** Math.ceil(Math.log2(2 * impulse.length));
	const fft = new FFT(size);
	const parts = fft.createComplexArray() as number[];
	const padded = new Array<number>(size).fill(0);
	for (const [index, value] of impulse.entries()) padded[index] = value;
	fft.realTransform(parts, padded);
	return {parts, size};
}

/** Level of pink noise of a band through it, dB. */
export function pinkLevelDb(impulse: Float64Array, [from, to]: readonly [number, number]): number {
	const {parts, size} = spectrumOf(impulse);
	let [sum, weight] = [0, 0];
	for (let bin = Math.ceil((from * size) / playerRate); bin <= (to * size) / playerRate; bin++) {
		sum += (parts[2 * bin]! ** 2 + parts[2 * bin + 1]! ** 2) / bin;
		weight += 1 / bin;
	}

	return 10 * Math.log10(sum / weight);
}

/**
T20 of each octave from a moment on, seconds: Butterworth band-passes of third order without phase, Schroeder's integral.

@see ISO 3382-2, T20.
*/
export function reverberations(
	impulse: Float64Array,
	fromSeconds: number,
	octavesHertz: readonly number[],
): number[] {
	const {parts, size} = spectrumOf(impulse);
	const fft = new FFT(size);
	const from = Math.max(0, Math.round(fromSeconds * playerRate));
	return octavesHertz.map(nominal => {
		const middle = 1000 * 10 ** (0.3 * Math.round(Math.log2(nominal / 1000)));
		const width = 10 ** 0.15 - 10 ** -0.15;
		const filtered = fft.createComplexArray() as number[];
		filtered.fill(0);
		for (let bin = 1; bin < size / 2; bin++) {
			const ratio = (bin * playerRate) / size / middle;
			const gain = 1 / Math.sqrt(1 + ((ratio - 1 / ratio) / width) ** 6);
			filtered[2 * bin] = gain * parts[2 * bin]!;
			filtered[2 * bin + 1] = gain * parts[2 * bin + 1]!;
		}

		fft.completeSpectrum(filtered);
		const out = fft.createComplexArray() as number[];
		fft.inverseTransform(out, filtered);
		const left = new Float64Array(impulse.length + 1);
		for (let at = impulse.length - 1; at >= 0; at--) left[at] = left[at + 1]! + out[2 * at]! ** 2;
		return slopeSeconds(left, from);
	});
}

function slopeSeconds(left: Float64Array, from: number): number {
	let [count, t, y, tt, ty] = [0, 0, 0, 0, 0];
	for (let at = from; at < left.length - 1; at++) {
		const level = 10 * Math.log10(left[at]! / left[from]!);
		if (level > -5) continue;
		if (level < -25) break;
		const seconds = (at - from) / playerRate;
		count++;
		t += seconds;
		y += level;
		tt += seconds * seconds;
		ty += seconds * level;
	}

	return -60 / ((count * ty - t * y) / (count * tt - t * t));
}
