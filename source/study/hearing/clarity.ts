import {withinBand} from '../../science/signal/envelope.ts';
import type {Impulse} from './impulses.ts';

/** How much of the sound comes early. @see ISO 3382-1:2009, Annex A.2. */
export type Clarity = {
	/** Early against late energy, limit at 50 and 80 ms, dB. */
	readonly c50Db: number;
	readonly c80Db: number;
	/** Share of the energy within 50 ms, 0 to 1. */
	readonly d50: number;
	/** Centre time, ms. */
	readonly centreTimeMs: number;
};

/** The octaves at 500 Hz and 1 kHz, whose mean the standard takes for one number. */
const speechBand = [330, 380, 1350, 1500] as const;

/** Clarity in the octaves at 500 Hz and 1 kHz together. */
export function clarityOf({samples, zero, rateHz}: Impulse, arrivalMs: number): Clarity {
	const from = Math.max(0, Math.round(zero + (arrivalMs * rateHz) / 1000));
	return clarityFrom(withinBand(samples, rateHz, speechBand).subarray(from), rateHz);
}

/**
Clarity of a response that starts with its direct sound.

@param samples - Shape (n); the last fifth counts as noise and its power is taken off.
*/
export function clarityFrom(samples: Float64Array, rateHz: number): Clarity {
	const tail = Math.floor(samples.length / 5);
	let noise = 0;
	for (let index = samples.length - tail; index < samples.length; index += 1) noise += samples[index]! ** 2;
	noise /= Math.max(1, tail);
	let early50 = 0;
	let early80 = 0;
	let all = 0;
	let moment = 0;
	const at50 = 0.05 * rateHz;
	const at80 = 0.08 * rateHz;
	for (let index = 0; index < samples.length; index += 1) {
		const power = samples[index]! ** 2 - noise;
		all += power;
		moment += power * (index + 0.5);
		if (index < at50) early50 += power;
		if (index < at80) early80 += power;
	}

	const ratioDb = (early: number) => 10 * Math.log10(Math.max(early, 1e-30) / Math.max(all - early, 1e-30));
	return {
		c50Db: ratioDb(early50),
		c80Db: ratioDb(early80),
		d50: early50 / all,
		centreTimeMs: (1000 * moment) / all / rateHz,
	};
}
