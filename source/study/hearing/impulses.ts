import {divide, dividerOf, type SweepDivider} from '../../science/signal/deconvolve.ts';
import {type RealTransform, realTransform} from '../../science/signal/fourier.ts';
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
const keptBeforeSeconds = 0.11;

/**
Cuts and divides sweeps of one playing. The divider of each law is made once.

@param startSample - Where the file began in the recording, samples; may lie before it.
@param rateHz - Samples in one second of the player's clock.
*/
export function impulseCutter(
	sound: Sound,
	channel: number,
	startSample: number,
	rateHz: number,
): (sweep: RoundSweep) => Impulse {
	const dividers = new Map<SweepLaw, {divider: SweepDivider; transform: RealTransform}>();
	const transforms = new Map<number, RealTransform>();
	const before = Math.round(beforeSeconds * rateHz);
	return sweep => {
		const {law, pauseSeconds} = sweep;
		const exact = startSample + sweep.atSeconds * rateHz;
		const start = Math.round(exact);
		const after = Math.floor((law.seconds + pauseSeconds) * rateHz);
		let tools = dividers.get(law);
		if (!tools) {
			// As long as the longest pause asks for, so that one divider serves every sweep of a law.
			const length = powerOfTwoFrom(before + Math.ceil((law.seconds + longestPauseSeconds) * rateHz));
			const transform = transforms.get(length) ?? realTransform(length);
			transforms.set(length, transform);
			const reference = sweepSamples(law, rateHz, before, length);
			tools = {divider: dividerOf(reference, rateHz, usableBand(sweep), transform), transform};
			dividers.set(law, tools);
		}

		const recorded = sound.read(channel, start - before, before + after);
		const response = divide(recorded, tools.divider, tools.transform);
		// Linear gain between file and recording, whatever the sweep's level was.
		const gain = 10 ** (-sweep.levelDbfs / 20);
		const keep = Math.round(keptBeforeSeconds * rateHz);
		const tail = Math.floor(pauseSeconds * 0.97 * rateHz);
		const samples = new Float64Array(keep + tail);
		for (let index = 0; index < keep; index += 1)
			samples[index] = gain * response[response.length - keep + index]!;
		for (let index = 0; index < tail; index += 1) samples[keep + index] = gain * response[index]!;
		return {
			sweep,
			rateHz,
			samples,
			// The sweep's true time lies between samples.
			zero: keep + (exact - start),
		};
	};
}
