import type {Sound} from '../../../science/signal/waveRead.ts';
import {meanPower} from '../noise.ts';
import type {RoundSweep} from '../round.ts';

/** Where a playing lies in its recording. */
export type Recorded = {
	readonly sound: Sound;
	readonly channel: number;
	readonly startSample: number;
	readonly rateHz: number;
};

/** Samples of a stretch of the file as they were recorded. */
export function stretchOf(
	{sound, channel, startSample, rateHz}: Recorded,
	fromSeconds: number,
	toSeconds: number,
): Float64Array {
	const from = Math.round(startSample + fromSeconds * rateHz);
	return sound.read(channel, from, Math.max(0, Math.round((toSeconds - fromSeconds) * rateHz)));
}

/** Power of the last quarter second of the pause after a sweep: what sounds when nothing is played. */
export function pausePower(recorded: Recorded, {atSeconds, law, pauseSeconds}: RoundSweep): number {
	const end = atSeconds + law.seconds + pauseSeconds - 0.02;
	const part = stretchOf(recorded, end - 0.25, end);
	return meanPower(part, 0, part.length);
}

/** Power as a level, dB re a full-scale sine. */
export const powerDbfs = (power: number) => 10 * Math.log10(Math.max(2 * power, 1e-20));
