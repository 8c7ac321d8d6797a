import {bandNoise} from '../../science/signal/bandNoise.ts';
import {rmsOfDbfs} from '../../science/signal/level.ts';
import {seededRandom} from '../../science/signal/seededRandom.ts';
import {sweepSamples} from '../../science/signal/sweep.ts';
import type {PlayedRound} from '../hearing/round.ts';
import {placedAs, roundCode} from '../hearing/roundCode.ts';
import {markSamples} from '../hearing/roundMark.ts';

/** Noise that wakes what sleeps: low enough for subs, high enough for whoever listens. */
const openingBand = {fromHertz: 25, toHertz: 4000} as const;
const burstBand = {fromHertz: 300, toHertz: 3000} as const;
const lowBurstBand = {fromHertz: 31.5, toHertz: 90} as const;
const edgeSeconds = 0.03;

/**
Samples of one channel of a round's file, from beginning to end.

@param channel - As the round names it.
@returns Shape (seconds · rate); silent where the channel does not sound.
*/
export function roundSamples(round: PlayedRound, channel: string): Float64Array {
	const rate = round.sampleRateHz;
	const samples = new Float64Array(Math.ceil(round.seconds * rate));
	if (!round.channels.includes(channel)) return samples;
	const isLow = channel.startsWith('LFE');
	const lower = isLow ? -10 : 0;
	const noiseOf = (band: {readonly fromHertz: number; readonly toHertz: number}, levelDbfs: number) =>
		bandNoise({
			...band,
			sampleRateHz: rate,
			length: 2 ** 17,
			levelDbfs,
			crestDb: 11,
			random: seededRandom(1 + round.channels.indexOf(channel)),
		});
	const faint = noiseOf(openingBand, round.openingLevelDbfs + lower);
	place(samples, 0, Math.round(round.openingSeconds * rate), rate, index => faint[index % faint.length]!);
	for (const {atSeconds, seconds} of round.bursts.filter(burst => burst.channel === channel)) {
		const noise = noiseOf(isLow ? lowBurstBand : burstBand, round.burstLevelDbfs + lower);
		place(samples, Math.round(atSeconds * rate), Math.round(seconds * rate), rate, index => noise[index]!);
	}

	if (!isLow) {
		const mark = markSamples(roundCode(round.size, round.channels.map(placedAs)), rate);
		addScaled(samples, Math.round(round.markAtSeconds * rate), mark, peakOfSine(round.markLevelDbfs));
	}

	for (const sweep of round.sweeps.filter(each => each.channel === channel)) {
		const length = Math.ceil(sweep.law.seconds * rate);
		addScaled(
			samples,
			Math.round(sweep.atSeconds * rate),
			sweepSamples(sweep.law, rate, 0, length),
			peakOfSine(sweep.levelDbfs),
		);
	}

	return samples;
}

const peakOfSine = (levelDbfs: number) => rmsOfDbfs(levelDbfs) * Math.SQRT2;

function addScaled(into: Float64Array, from: number, samples: Float64Array, factor: number): void {
	for (let index = 0; index < samples.length; index += 1)
		into[from + index] = into[from + index]! + factor * samples[index]!;
}

/** Adds what swells and fades, so that nothing clicks. */
function place(
	into: Float64Array,
	from: number,
	length: number,
	rate: number,
	valueAt: (index: number) => number,
): void {
	const edge = edgeSeconds * rate;
	for (let index = 0; index < length; index += 1) {
		const near = Math.min(index, length - 1 - index);
		const swell = near >= edge ? 1 : 0.5 - 0.5 * Math.cos((Math.PI * near) / edge);
		into[from + index] = into[from + index]! + swell * valueAt(index);
	}
}
