import {type BandGain, type BandPower, energyBefore} from '../../science/signal/bandPower.ts';
import {bandWeight, type SoftBand} from '../../science/signal/spectrumParts.ts';
import {splitImpulse} from './decay.ts';
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
const speechBand: SoftBand = [330, 380, 1350, 1500];
const speech: BandGain = {
	fromHertz: speechBand[0],
	toHertz: speechBand[3],
	gainAt: hertz => bandWeight(speechBand, hertz),
};
/** What the filter, which has no delay, brings ahead of the first sound belongs to it, seconds. */
const aheadSeconds = 0.002;

/** Clarity in the octaves at 500 Hz and 1 kHz together. */
export function clarityOf(impulse: Impulse, arrivalMs: number, split = splitImpulse(impulse)): Clarity {
	return clarityFrom(
		split(speech),
		Math.max(0, impulse.zero / impulse.rateHz + arrivalMs / 1000),
		aheadSeconds,
	);
}

/**
Clarity of a response from its first sound on.

@param power - Of the response; the last fifth from the first sound on counts as noise and is taken off.
@param fromSeconds - The first sound.
@param ahead - How much before it belongs to it, seconds.
*/
export function clarityFrom(power: BandPower, fromSeconds = 0, ahead = 0): Clarity {
	const energyAt = energyBefore(power);
	const starts = Math.max(0, fromSeconds - ahead);
	const ends = power.powers.length / power.rateHz;
	const tail = (ends - fromSeconds) / 5;
	const noise = (energyAt(ends) - energyAt(ends - tail)) / tail;
	const until = (seconds: number) => energyAt(seconds) - energyAt(starts) - noise * (seconds - starts);
	const all = until(ends);
	let moment = 0;
	const last = power.powers.length;
	for (let index = Math.ceil(fromSeconds * power.rateHz); index < last; index += 1) {
		const seconds = index / power.rateHz - fromSeconds;
		moment += (power.powers[index]! - noise / power.rateHz) * seconds;
	}

	const ratioDb = (early: number) => 10 * Math.log10(Math.max(early, 1e-30) / Math.max(all - early, 1e-30));
	return {
		c50Db: ratioDb(until(fromSeconds + 0.05)),
		c80Db: ratioDb(until(fromSeconds + 0.08)),
		d50: until(fromSeconds + 0.05) / all,
		centreTimeMs: (1000 * moment) / all,
	};
}
