import {forwardReal} from '../../science/signal/fourier.ts';
import {powerOfTwoFrom} from '../../science/signal/spectrumParts.ts';
import type {Impulse} from './impulses.ts';

/** A complex response on the grid of `responseFrequencies`, against a time that all lines of a playing share. */
export type HeardResponse = {readonly real: Float64Array; readonly imaginary: Float64Array};

const lowFromHertz = 10;
const lowToHertz = 300;
const lowPerOctave = 48;
const highPerOctave = 24;
const highToHertz = 20_000;

/** Frequencies at which responses are kept: 10 to 300 Hz in 1/48 octave, above to 20 kHz in 1/24 octave. */
export function responseFrequencies(): Float64Array {
	const low = Math.floor(lowPerOctave * Math.log2(lowToHertz / lowFromHertz)) + 1;
	const lastLow = lowFromHertz * 2 ** ((low - 1) / lowPerOctave);
	const high = Math.floor(highPerOctave * Math.log2(highToHertz / lastLow));
	return Float64Array.from({length: low + high}, (_, index) =>
		index < low
			? lowFromHertz * 2 ** (index / lowPerOctave)
			: lastLow * 2 ** ((index - low + 1) / highPerOctave),
	);
}

/** How an impulse response is windowed before its spectrum is taken, ms about the arrival. */
export type ResponseWindow = {readonly beforeMs: number; readonly afterMs: number};

/**
An impulse response with soft ends: it swells over the first half of the time before and fades over the last third.

@returns Shape (n), and the sample of its first one in the impulse's own.
*/
export function windowedImpulse(
	{samples, zero, rateHz}: Impulse,
	arrivalMs: number,
	{beforeMs, afterMs}: ResponseWindow,
): {readonly samples: Float64Array; readonly first: number} {
	const middle = Math.round(zero + (arrivalMs * rateHz) / 1000);
	const before = Math.round((beforeMs * rateHz) / 1000);
	const first = Math.max(0, middle - before);
	const end = Math.min(samples.length, middle + Math.round((afterMs * rateHz) / 1000));
	const result = samples.slice(first, Math.max(first + 2, end));
	const fade = Math.max(1, Math.round((end - middle) / 3));
	const swell = Math.max(1, Math.round(before / 2));
	for (let index = 0; index < Math.min(swell, result.length); index += 1)
		result[index] = result[index]! * (0.5 - 0.5 * Math.cos((Math.PI * (index + 0.5)) / swell));
	for (let index = 0; index < Math.min(fade, result.length); index += 1) {
		const at = result.length - 1 - index;
		result[at] = result[at]! * (0.5 - 0.5 * Math.cos((Math.PI * (index + 0.5)) / fade));
	}

	return {samples: result, first};
}

/** Spectrum of a windowed impulse response, and how to read it. */
export type ImpulseSpectrum = {
	readonly spectrum: Float64Array;
	readonly binHertz: number;
	/** Sample that the phase refers to. */
	readonly rateHz: number;
	readonly first: number;
	readonly zero: number;
};

/** Spectrum of an impulse response within a window about its arrival. */
export function impulseSpectrum(
	impulse: Impulse,
	arrivalMs: number,
	window: ResponseWindow,
): ImpulseSpectrum {
	const {samples, first} = windowedImpulse(impulse, arrivalMs, window);
	// Long enough for bins 0.4 Hz apart, so that reading between them is smooth.
	const length = powerOfTwoFrom(Math.max(samples.length, 2.6 * impulse.rateHz));
	const padded = new Float64Array(length);
	padded.set(samples);
	return {
		spectrum: forwardReal(padded),
		binHertz: impulse.rateHz / length,
		rateHz: impulse.rateHz,
		first,
		zero: impulse.zero,
	};
}

/**
A complex response at given frequencies.

Read between bins by a cubic through four of them, which is good to 1e-3 of the peak for what dies away within a second.

@param referenceMs - Time that counts as 0, ms from the sweep's scheduled time.
*/
export function responseAt(
	{spectrum, binHertz, rateHz, first, zero}: ImpulseSpectrum,
	frequenciesHz: Float64Array,
	referenceMs: number,
): HeardResponse {
	const count = frequenciesHz.length;
	const real = new Float64Array(count);
	const imaginary = new Float64Array(count);
	const bins = spectrum.length / 2;
	const lateSeconds = (first - zero) / rateHz - referenceMs / 1000;
	for (let index = 0; index < count; index += 1) {
		const hertz = frequenciesHz[index]!;
		const place = hertz / binHertz;
		const bin = Math.floor(place);
		if (bin < 1 || bin + 2 >= bins) continue;
		const x = place - bin;
		const w0 = (-x * (x - 1) * (x - 2)) / 6;
		const w1 = ((x + 1) * (x - 1) * (x - 2)) / 2;
		const w2 = (-(x + 1) * x * (x - 2)) / 2;
		const w3 = ((x + 1) * x * (x - 1)) / 6;
		const at = 2 * (bin - 1);
		const a = w0 * spectrum[at]! + w1 * spectrum[at + 2]! + w2 * spectrum[at + 4]! + w3 * spectrum[at + 6]!;
		const b =
			w0 * spectrum[at + 1]! + w1 * spectrum[at + 3]! + w2 * spectrum[at + 5]! + w3 * spectrum[at + 7]!;
		const phase = -2 * Math.PI * hertz * lateSeconds;
		const cosine = Math.cos(phase);
		const sine = Math.sin(phase);
		real[index] = a * cosine - b * sine;
		imaginary[index] = a * sine + b * cosine;
	}

	return {real, imaginary};
}

/**
Level of a response to pink noise of a band, dB re the file: the mean power over log f.

@param spectrum - Of an impulse response that holds its whole decay.
*/
export function bandLevelDb(
	{spectrum, binHertz}: Pick<ImpulseSpectrum, 'spectrum' | 'binHertz'>,
	fromHertz: number,
	toHertz: number,
): number {
	let sum = 0;
	let weight = 0;
	for (let bin = Math.ceil(fromHertz / binHertz); bin * binHertz <= toHertz; bin += 1) {
		if (2 * bin + 1 >= spectrum.length) break;
		sum += (spectrum[2 * bin]! ** 2 + spectrum[2 * bin + 1]! ** 2) / bin;
		weight += 1 / bin;
	}

	return weight > 0 ? 10 * Math.log10(Math.max(sum / weight, 1e-30)) : Number.NEGATIVE_INFINITY;
}
