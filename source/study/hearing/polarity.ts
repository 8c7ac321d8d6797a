import {forwardReal} from '../../science/signal/fourier.ts';
import {powerOfTwoFrom} from '../../science/signal/spectrumParts.ts';
import type {Impulse} from './impulses.ts';

/** Sign of the direct sound: 1 or −1, and how clear it is, 0 (a toss) to 1 (every frequency says the same). */
export type PolarityFound = {readonly sign: 1 | -1; readonly clearness: number};

const fromHertz = 200;
const toHertz = 1000;
const beforeMs = 0.6;
const afterMs = 4;

/**
Polarity from 200 to 1000 Hz of the first 4 ms: there a woofer alone plays, so that a tweeter turned by its crossover
does not count. The spectrum is taken against the arrival; the sign of its real part, summed over log f, decides.

@param arrivalMs - First sound, ms from the sweep's scheduled time.
*/
export function polarityOf({samples, zero, rateHz}: Impulse, arrivalMs: number): PolarityFound {
	const middle = zero + (arrivalMs * rateHz) / 1000;
	const from = Math.max(0, Math.round(middle - (beforeMs * rateHz) / 1000));
	const to = Math.min(samples.length, Math.round(middle + (afterMs * rateHz) / 1000));
	const fade = Math.round((rateHz * 1) / 1000);
	const length = powerOfTwoFrom(8 * (to - from));
	const windowed = new Float64Array(length);
	for (let index = from; index < to; index += 1) {
		const left = to - index;
		const weight = left >= fade ? 1 : 0.5 - 0.5 * Math.cos((Math.PI * left) / fade);
		windowed[index - from] = weight * samples[index]!;
	}

	const spectrum = forwardReal(windowed);
	const binHertz = rateHz / length;
	let real = 0;
	let size = 0;
	for (let bin = Math.ceil(fromHertz / binHertz); bin * binHertz <= toHertz; bin += 1) {
		const phase = (2 * Math.PI * bin * (middle - from)) / length;
		const a = spectrum[2 * bin]!;
		const b = spectrum[2 * bin + 1]!;
		real += (a * Math.cos(phase) - b * Math.sin(phase)) / bin;
		size += Math.hypot(a, b) / bin;
	}

	return {sign: real < 0 ? -1 : 1, clearness: size > 0 ? Math.abs(real) / size : 0};
}
