import {forwardReal, inverseReal} from './fourier.ts';
import {setLevel} from './level.ts';

export type BandNoise = {
	/** Band limits, hertz, 0 < from < to. */
	readonly fromHertz: number;
	readonly toHertz: number;
	readonly sampleRateHz: number;
	/** Length of one period, samples, a power of two. */
	readonly length: number;
	/** RMS, dBFS with a full-scale sine as 0 dBFS. */
	readonly levelDbfs: number;
	/** Crest that is aimed at, dB; reached within about 1 dB. */
	readonly crestDb: number;
	/** Numbers between 0 and 1. */
	readonly random: () => number;
};

const rounds = 5;

/** Shortest power of two that samples the band three times over, so that its peaks are seen between samples too. */
function workingLength({toHertz, sampleRateHz, length}: BandNoise): number {
	const needed = (6 * toHertz * length) / sampleRateHz;
	let size = 16;
	while (size < needed && size < length) size *= 2;
	return size;
}

/**
One period of pink noise between two frequencies: lines of magnitude 1/√f with random phases, brought back to time.

As it is periodic it loops without a click, its spectrum is exactly pink line by line, nothing lies outside the band, and
its level is exact. The crest is lowered by clipping, taking the phases of the clipped signal and the magnitudes of the
pink one, over and over; that leaves the spectrum as it is.

@returns Shape (length).
@throws {RangeError} If the band holds no line or reaches half the sample rate.
@see R. W. Gerchberg, W. O. Saxton, Optik 35 (1972) 237–246, for keeping magnitudes and iterating phases.
*/
export function bandNoise(noise: BandNoise): Float64Array {
	const {fromHertz, toHertz, sampleRateHz, length, random} = noise;
	const perHertz = length / sampleRateHz;
	const first = Math.ceil(fromHertz * perHertz);
	const last = Math.floor(toHertz * perHertz);
	if (!(fromHertz > 0 && toHertz < sampleRateHz / 2))
		throw new RangeError(
			`the band must lie between 0 and ${sampleRateHz / 2} Hz, got ${fromHertz} to ${toHertz} Hz`,
		);
	if (first > last || first < 1)
		throw new RangeError(
			`the band ${fromHertz} to ${toHertz} Hz holds no line of a period of ${length} samples`,
		);
	const lines = last - first + 1;
	const real = new Float64Array(lines);
	const imaginary = new Float64Array(lines);
	for (let line = 0; line < lines; line += 1) {
		const phase = 2 * Math.PI * random();
		const size = 1 / Math.sqrt(first + line);
		real[line] = size * Math.cos(phase);
		imaginary[line] = size * Math.sin(phase);
	}

	lowerCrest(real, imaginary, first, workingLength(noise), 10 ** (noise.crestDb / 20));
	return setLevel(inverseReal(spectrumOf(real, imaginary, first, length)), noise.levelDbfs);
}

function spectrumOf(
	real: Float64Array,
	imaginary: Float64Array,
	first: number,
	length: number,
): Float64Array {
	const spectrum = new Float64Array(length + 2);
	for (let line = 0; line < real.length; line += 1) {
		spectrum[2 * (first + line)] = real[line]!;
		spectrum[2 * (first + line) + 1] = imaginary[line]!;
	}

	return spectrum;
}

function lowerCrest(
	real: Float64Array,
	imaginary: Float64Array,
	first: number,
	length: number,
	crest: number,
): void {
	for (let round = 0; round < rounds; round += 1) {
		const samples = inverseReal(spectrumOf(real, imaginary, first, length));
		let sum = 0;
		for (let index = 0; index < length; index += 1) sum += samples[index]! * samples[index]!;
		// A little below the aim, as what is clipped partly comes back.
		const limit = 0.93 * crest * Math.sqrt(sum / length);
		let isClipped = false;
		for (let index = 0; index < length; index += 1) {
			if (samples[index]! > limit) samples[index] = limit;
			else if (samples[index]! < -limit) samples[index] = -limit;
			else continue;
			isClipped = true;
		}

		if (!isClipped) return;
		const clipped = forwardReal(samples);
		for (let line = 0; line < real.length; line += 1) {
			const [a, b] = [clipped[2 * (first + line)]!, clipped[2 * (first + line) + 1]!];
			const factor = 1 / (Math.sqrt(first + line) * Math.hypot(a, b));
			real[line] = a * factor;
			imaginary[line] = b * factor;
		}
	}
}
