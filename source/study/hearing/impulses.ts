import {dividerOf, type PartDivider, partDivider} from '../../science/signal/deconvolve.ts';
import {realTransform} from '../../science/signal/fourier.ts';
import {powerOfTwoFrom} from '../../science/signal/spectrumParts.ts';
import {type SweepLaw, sweepSamples} from '../../science/signal/sweep.ts';
import type {Sound} from '../../science/signal/waveRead.ts';
import {longestPauseSeconds, type RoundSweep, usableBand} from './round.ts';

/** The impulse response of one sweep of a playing. */
export type Impulse = {
	readonly sweep: RoundSweep;
	/** Samples in one second of the player's clock. */
	readonly rateHz: number;
	readonly samples: Float64Array;
	/** Sample of the sweep's scheduled time; before it lies what came early, and noise. */
	readonly zero: number;
};

/** How much is kept before the scheduled time, seconds: room for the recorder's clock, and to see the noise. */
const beforeSeconds = 0.12;
/** With the tail of the longest pause just 2^16 samples at 48 kHz. */
const keptBeforeSeconds = 0.104;

/** Cuts a sweep out of a recording and divides it by what was played. */
export type ImpulseCutter = {
	/** Samples in one second of the player's clock. */
	readonly rateHz: number;
	/** @param startSample - Where the file began in the recording, samples; may lie before it. */
	readonly cut: (sound: Sound, channel: number, startSample: number, sweep: RoundSweep) => Impulse;
};

/**
Cuts and divides sweeps of any playings. What is needed to divide by each law is made once, when its first sweep is cut.

@param rateHz - Samples in one second of the player's clock.
*/
export function impulseCutter(rateHz: number): ImpulseCutter {
	const dividers: Array<{readonly law: SweepLaw; readonly pauseSeconds: number; readonly own: PartDivider}> =
		[];
	const before = Math.round(beforeSeconds * rateHz);
	const keep = Math.round(keptBeforeSeconds * rateHz);
	const dividerFor = (sweep: RoundSweep): PartDivider => {
		const {law, pauseSeconds} = sweep;
		const made = dividers.find(each => each.law === law && each.pauseSeconds === pauseSeconds);
		if (made) return made.own;
		const longest = before + Math.floor((law.seconds + pauseSeconds) * rateHz);
		const length = powerOfTwoFrom(before + Math.ceil((law.seconds + longestPauseSeconds) * rateHz));
		const transform = realTransform(length);
		const reference = sweepSamples(law, rateHz, before, length);
		const divider = dividerOf(reference, rateHz, usableBand(sweep), transform);
		const own = partDivider(divider, -keep, keep + tailOf(sweep), longest);
		dividers.push({law, pauseSeconds, own});
		return own;
	};
	const tailOf = ({pauseSeconds}: RoundSweep) => Math.floor(pauseSeconds * 0.97 * rateHz);
	return {
		rateHz,
		cut(sound, channel, startSample, sweep) {
			const exact = startSample + sweep.atSeconds * rateHz;
			const start = Math.round(exact);
			const divider = dividerFor(sweep);
			const recorded = sound.read(channel, start - before, divider.longest);
			// Linear gain between file and recording, whatever the sweep's level was.
			const gain = 10 ** (-sweep.levelDbfs / 20);
			const samples = divider.divide(recorded);
			for (let index = 0; index < samples.length; index += 1) samples[index] = gain * samples[index]!;
			return {
				sweep,
				rateHz,
				samples,
				// The sweep's true time lies between samples.
				zero: keep + (exact - start),
			};
		},
	};
}
