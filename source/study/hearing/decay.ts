import {
	type BandGain,
	type BandPower,
	powerSplitter,
	type SplitterTools,
} from '../../science/signal/bandPower.ts';
import {
	type FrequencyBand,
	nominalOctave,
	octaveGain,
	roomOctaves,
} from '../../science/signal/octaveBands.ts';
import {decayCurve} from './decayCurve.ts';
import type {Impulse} from './impulses.ts';

/** How a room dies away in one octave; what the range does not allow is left out. */
export type OctaveDecay = {
	/** Nominal middle of the octave. */
	readonly hertz: number;
	/** From the strongest to the noise, dB. */
	readonly rangeDb: number;
	/** Each extrapolated to 60 dB, seconds. */
	readonly edtSeconds?: number;
	readonly t20Seconds?: number;
	readonly t30Seconds?: number;
};

/** Bandwidth times decay time below which the filter is heard, not the room; for filters without delay. @see ISO 3382-2, 7.3 */
const leastProduct = 4;

const octaves: ReadonlyArray<{readonly band: FrequencyBand; readonly gain: BandGain}> = roomOctaves.map(
	band => ({
		band,
		gain: {
			fromHertz: band.fromHertz / Math.SQRT2,
			toHertz: band.toHertz * Math.SQRT2,
			gainAt: hertz => octaveGain(band, hertz),
		},
	}),
);

/**
Decay in every octave from 63 Hz to 8 kHz.

@param split - The impulse response's power by band.
@see ISO 3382-1:2009, 5.3.3 and ISO 3382-2:2008: backward integration, noise compensated.
*/
export function octaveDecays(
	impulse: Impulse,
	arrivalMs: number,
	split = splitImpulse(impulse),
): OctaveDecay[] {
	const seconds = Math.max(0, impulse.zero / impulse.rateHz + arrivalMs / 1000);
	return octaves
		.filter(({band: {toHertz}}) => toHertz < Math.min(0.47 * impulse.rateHz, impulse.sweep.law.toHertz))
		.map(({band, gain}) => decayIn(band, split(gain), seconds));
}

/** Power of an impulse response by band. */
export function splitImpulse(
	{samples, rateHz}: Impulse,
	tools?: SplitterTools,
): (band: BandGain) => BandPower {
	return powerSplitter(samples, rateHz, tools);
}

function decayIn(
	{fromHertz, toHertz, middleHertz}: FrequencyBand,
	power: BandPower,
	fromSeconds: number,
): OctaveDecay {
	const {rangeDb, secondsBetween} = decayCurve(power, fromSeconds, middleHertz);
	const wide = (seconds: number | undefined) =>
		seconds !== undefined && (toHertz - fromHertz) * seconds >= leastProduct ? seconds : undefined;
	const edt = wide(secondsBetween(0, -10));
	const t20 = wide(secondsBetween(-5, -25));
	const t30 = wide(secondsBetween(-5, -35));
	return {
		hertz: nominalOctave(middleHertz),
		rangeDb,
		...(edt !== undefined && {edtSeconds: edt}),
		...(t20 !== undefined && {t20Seconds: t20}),
		...(t30 !== undefined && {t30Seconds: t30}),
	};
}
