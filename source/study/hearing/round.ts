import {lfeGainDb} from '../../profile/practice.ts';
import {channelOrder} from '../../science/signal/channelMask.ts';
import {type SweepLaw, synchronisedSweep} from '../../science/signal/sweep.ts';
import type {RoundSize} from './roundCode.ts';
import {markSeconds} from './roundMark.ts';

/** What a sweep is for: a first soft pass, the one that counts, the first channel once more, and once 10 dB softer. */
export type SweepPass = 'soft' | 'main' | 'again' | 'softer';

export type RoundSweep = {
	readonly channel: string;
	readonly pass: SweepPass;
	readonly law: SweepLaw;
	/** Seconds from the beginning of the file. */
	readonly atSeconds: number;
	/** Silence after it, seconds. */
	readonly pauseSeconds: number;
	/** Level of the sine, dBFS with a full-scale sine as 0 dBFS. */
	readonly levelDbfs: number;
};

export type RoundBurst = {readonly channel: string; readonly atSeconds: number; readonly seconds: number};

/** What a round's file plays, when, and how loud. Who plays it and who cuts recordings of it both ask here. */
export type PlayedRound = {
	readonly size: RoundSize;
	readonly sampleRateHz: number;
	readonly seconds: number;
	/** Channels that sound, in the order in which they do. */
	readonly channels: readonly string[];
	readonly openingSeconds: number;
	readonly openingLevelDbfs: number;
	readonly burstLevelDbfs: number;
	readonly bursts: readonly RoundBurst[];
	readonly markAtSeconds: number;
	readonly markLevelDbfs: number;
	readonly sweeps: readonly RoundSweep[];
};

export const roundRateHz = 48_000;
const openingSeconds = 12;
const openingLevelDbfs = -60;
const burstLevelDbfs = -32;
/** Sweeps are as loud as noise that reads 85 dB where −30 dBFS reads 75. */
const mainLevelDbfs = -20;
export const softPassDb = -20;
export const softerDb = -10;
/** The bass round's soft pass is not so soft: it is what playings are aligned by. */
const bassSoftPassDb = -10;

/** From below what a sub can do, so that its own roll-off shows, to the end of hearing. */
const fullLaw = synchronisedSweep(15, 20_000, 6);
const bassLaw = synchronisedSweep(15, 300, 4);
const shortLaw = synchronisedSweep(15, 20_000, 2);
export const longestPauseSeconds = 1.3;
const shortPauseSeconds = 0.9;

const isLow = (channel: string) => channel.startsWith('LFE');
/** Low effects last; the rest in the order of the file. */
const soundingOrder = (channels: readonly string[]) => [
	...channels.filter(id => !isLow(id)),
	...channels.filter(isLow),
];

/**
Times, laws and levels of a round.

@param channels - Channels that sound, at least one of them no LFE channel; any order.
@throws {RangeError} If no main channel is among them, or more than eight are.
*/
export function playedRound(size: RoundSize, channels: readonly string[]): PlayedRound {
	const order = soundingOrder(channelOrder(channels).channels);
	if (order.length > 8) throw new RangeError(`channels must be at most 8, got ${order.length}`);
	const first = order[0];
	if (first === undefined || isLow(first))
		throw new RangeError(`channels must hold a main channel, got ${channels.join(', ') || 'none'}`);
	const sweeps: RoundSweep[] = [];
	const markAtSeconds = openingSeconds + 0.2;
	let at = markAtSeconds + markSeconds + 0.8;
	const add = (channel: string, pass: SweepPass, law: SweepLaw, offsetDb: number, pause: number) => {
		const levelDbfs = mainLevelDbfs + offsetDb + (isLow(channel) ? -lfeGainDb : 0);
		sweeps.push({channel, pass, law, atSeconds: at, pauseSeconds: pause, levelDbfs});
		// On a whole sample, so that what is cut is what was played.
		at = Math.ceil((at + law.seconds + pause) * roundRateHz) / roundRateHz;
	};

	const main = size === 'bass' ? bassLaw : fullLaw;
	at = Math.ceil(at * roundRateHz) / roundRateHz;
	for (const id of order)
		add(id, 'soft', shortLaw, size === 'bass' ? bassSoftPassDb : softPassDb, shortPauseSeconds);
	for (const id of order) add(id, 'main', isLow(id) ? bassLaw : main, 0, longestPauseSeconds);
	add(first, 'again', size === 'bass' ? shortLaw : fullLaw, 0, longestPauseSeconds);
	add(first, 'softer', shortLaw, softerDb, shortPauseSeconds);
	const apart = (openingSeconds - 2.5) / order.length;
	return {
		size,
		sampleRateHz: roundRateHz,
		seconds: at,
		channels: order,
		openingSeconds,
		openingLevelDbfs,
		burstLevelDbfs,
		bursts: order.map((channel, index) => ({channel, atSeconds: 1.5 + index * apart, seconds: 0.35})),
		markAtSeconds,
		markLevelDbfs: mainLevelDbfs - 4 - 10 * Math.log10(order.length),
		sweeps,
	};
}

/** Where a sweep holds enough of every frequency to divide by it: soft edges, hertz. */
export function usableBand({law}: RoundSweep): readonly [number, number, number, number] {
	return [law.fromHertz, law.swellsToHertz, law.fadesFromHertz * 0.93, law.toHertz * 0.98];
}
