import {type Control, control, onGrid, receiverOf, timingControl} from '../../../profile/ask/boxes.ts';
import {receiverDelayMs} from '../../../profile/ask/lines.ts';
import {processorOf, subsOf} from '../../../profile/ask/subs.ts';
import type {ChannelId, Profile} from '../../../profile/types.ts';
import type {CollectedPair} from './collect.ts';

/** One thing to change on one box. */
export type BlendAction = {
	readonly box: 'receiver' | 'processor' | 'sub';
	/** Channel, processor output, or sub. */
	readonly about: string;
	readonly what: 'delay' | 'distance' | 'polarity';
	/** Value that stands and value to enter, ms or metres; absent where what stands is not known. */
	readonly from?: number;
	readonly to?: number;
	/** Change in ms or metres; for polarity absent. */
	readonly change?: number;
};

export type BlendSetting = {
	readonly actions: readonly BlendAction[];
	/** Change of delay of the moved group against the still one that the steps really make, ms. */
	readonly addedMs: number;
	/** What was wanted minus what the steps make, ms. */
	readonly leftMs: number;
};

/** A way to make the change: lines of one box that all move by the same, and in which direction. */
type Way = {
	readonly box: 'receiver' | 'processor';
	readonly lines: readonly string[];
	/** 1 where the moved group's own delay changes, −1 where the still group's does instead. */
	readonly sign: 1 | -1;
	readonly control: Control;
	readonly standing: ReadonlyArray<number | undefined>;
};

function ways(profile: Profile, pair: CollectedPair): Way[] {
	const {standing} = pair;
	const timing = timingControl(receiverOf(profile).receiver);
	const subs = subsOf(profile);
	const lineDelays = (lines: readonly string[]) =>
		lines.map(line => (standing ? receiverDelayMs(profile, standing, line as ChannelId) : undefined));
	const receiverWay = (lines: readonly string[], sign: 1 | -1): Way => ({
		box: 'receiver',
		lines,
		sign,
		control: timing.delay,
		standing: lineDelays(lines),
	});
	const outputsOf = (ids: readonly string[]) =>
		ids.map(id => {
			const sub = subs.find(candidate => candidate.id === id)!;
			return processorOf(profile, sub) ? sub.processorOutput : undefined;
		});
	const processorWay = (ids: readonly string[], sign: 1 | -1): Way[] => {
		const outputs = outputsOf(ids);
		const processor = profile.bassProcessor;
		if (!processor || outputs.includes(undefined)) return [];
		const {stepMs, minimumMs, maximumMs} = processor.delay;
		const lines = [...new Set(outputs as string[])];
		return [
			{
				box: 'processor',
				lines,
				sign,
				control: control(stepMs, minimumMs, maximumMs),
				standing: lines.map(line =>
					standing ? (standing.outputs?.[line]?.delayMs?.stepped ?? 0) : undefined,
				),
			},
		];
	};

	const feeds = (ids: readonly string[]) => [
		...new Set(ids.map(id => subs.find(candidate => candidate.id === id)!.fedBy as string)),
	];
	const isWholeFeed = (ids: readonly string[]) =>
		feeds(ids).every(feed => subs.every(sub => sub.fedBy !== feed || ids.includes(sub.id)));
	const found: Way[] = [];
	if (pair.kind === 'mains') {
		if (isWholeFeed(pair.moved)) found.push(receiverWay(feeds(pair.moved), 1));
		found.push(...processorWay(pair.moved, 1));
		const mains = profile.channels
			.map(({id}) => id as string)
			.filter(id => !subs.some(sub => sub.fedBy === id));
		if (isWholeFeed(pair.moved)) found.push(receiverWay(mains, -1));
	} else {
		// Subs on one output move together and cannot be set apart there.
		const outputs = [outputsOf(pair.moved), outputsOf(pair.still)] as const;
		if (!outputs[0].some(output => outputs[1].includes(output))) {
			found.push(...processorWay(pair.moved, 1), ...processorWay(pair.still, -1));
		}

		if (isWholeFeed(pair.moved)) found.push(receiverWay(feeds(pair.moved), 1));
		if (isWholeFeed(pair.still)) found.push(receiverWay(feeds(pair.still), -1));
	}

	return found;
}

/** The whole number of steps nearest to a change, held to what every line of the way has left. */
function reachable({control: {step, minimum, maximum}, standing}: Way, wantedMs: number): number {
	const known = standing.filter(value => value !== undefined);
	const low = Math.max(...known.map(value => minimum - value), minimum - maximum);
	const high = Math.min(...known.map(value => maximum - value), maximum - minimum);
	const held = Math.min(high + 1e-9, Math.max(low - 1e-9, wantedMs));
	const steps = Math.round(held / step);
	const back = steps * step > high + 1e-6 ? -1 : steps * step < low - 1e-6 ? 1 : 0;
	return (steps + back) * step;
}

function delayActions(profile: Profile, way: Way, changeMs: number): BlendAction[] {
	if (Math.abs(changeMs) < 1e-9) return [];
	const timing = timingControl(receiverOf(profile).receiver);
	const isDistance = way.box === 'receiver' && timing.kind === 'distance';
	const entry = (delayMs: number) => (isDistance ? timing.toEntry(delayMs) : onGrid(way.control, delayMs));
	return way.lines.map((about, index) => {
		const from = way.standing[index];
		return {
			box: way.box,
			about,
			what: isDistance ? 'distance' : 'delay',
			...(from !== undefined && {
				from: Number((isDistance ? -from * timing.entryPerMs : from).toPrecision(12)),
				to: entry(from + changeMs),
			}),
			change: isDistance ? -changeMs * timing.entryPerMs : changeMs,
		};
	});
}

function polarityActions(profile: Profile, pair: CollectedPair): BlendAction[] {
	const subs = subsOf(profile);
	const moved = pair.moved.map(id => subs.find(candidate => candidate.id === id)!);
	const outputs = moved.map(sub => (processorOf(profile, sub) ? sub.processorOutput! : undefined));
	if (profile.bassProcessor?.invertsOutputs && !outputs.includes(undefined)) {
		return [...new Set(outputs)].map(about => ({box: 'processor', about: about!, what: 'polarity'}));
	}

	const feeds = [...new Set(moved.map(({fedBy}) => fedBy))];
	const isWhole = feeds.every(feed => subs.every(sub => sub.fedBy !== feed || pair.moved.includes(sub.id)));
	if (profile.receiver?.invertsSubs && isWhole)
		return feeds.map(about => ({box: 'receiver', about, what: 'polarity'}));
	return pair.moved.map(about => ({box: 'sub', about, what: 'polarity'}));
}

/**
Which box does what, to add a delay to the moved group and perhaps turn its polarity.

The first way that reaches the change within a step is taken: the receiver's line of all subs together, else the
processor's outputs, else the mains by the opposite. Subs against each other are set at the processor first.

@param wantedMs - Change of the moved group's delay, ms.
@returns `undefined` where no box can delay one against the other.
*/
export function planSetting(
	profile: Profile,
	pair: CollectedPair,
	wantedMs: number,
	flip: boolean,
): BlendSetting | undefined {
	const polarity = flip ? polarityActions(profile, pair) : [];
	let best: {way: Way; addedMs: number} | undefined;
	for (const way of ways(profile, pair)) {
		const addedMs = way.sign * reachable(way, way.sign * wantedMs);
		const isBetter =
			!best || Math.abs(wantedMs - addedMs) < Math.abs(wantedMs - best.addedMs) - way.control.step;
		if (isBetter) best = {way, addedMs};
	}

	if (!best) return undefined;
	const {way, addedMs} = best;
	return {
		actions: [...delayActions(profile, way, way.sign * addedMs), ...polarity],
		addedMs,
		leftMs: wantedMs - addedMs,
	};
}

/** Delays that can be added for a reading on purpose, ms, up to half a period either way and as the boxes allow. */
export function addableDelays(profile: Profile, pair: CollectedPair, crossoverHertz: number): number[] {
	const [way] = ways(profile, pair);
	if (!way) return [0];
	const periodMs = 1000 / crossoverHertz;
	const delays = Array.from(
		{length: 9},
		(_, index) => way.sign * reachable(way, way.sign * periodMs * (index / 8 - 0.5)),
	);
	return [...new Set(delays.map(delay => Number(delay.toFixed(4))))];
}
