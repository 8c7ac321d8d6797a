import {type Control, control, onGrid, receiverOf, timingControl} from '../../../profile/ask/boxes.ts';
import {lineOf, receiverDelayMs} from '../../../profile/ask/lines.ts';
import type {SetInForce} from '../../../profile/ask/settings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {isLfe} from '../../../profile/channels.ts';
import type {ChannelId, Profile} from '../../../profile/types.ts';

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
	/** Change of delay of the moved subs against the rest that the steps really make, ms. */
	readonly addedMs: number;
	/** What was wanted minus what the steps make, ms. */
	readonly leftMs: number;
};

/** A way to make the change: lines of one box that all move by the same, and in which direction. */
type Way = {
	readonly box: 'receiver' | 'processor';
	readonly lines: readonly string[];
	/** 1 where the moved subs' own delay changes, −1 where everybody else's does instead. */
	readonly sign: 1 | -1;
	readonly control: Control;
	readonly standing: ReadonlyArray<number | undefined>;
};

function ways(profile: Profile, set: SetInForce | undefined, moved: readonly string[]): Way[] {
	const timing = timingControl(receiverOf(profile).receiver);
	const subs = subsOf(profile);
	const receiverWay = (lines: readonly string[], sign: 1 | -1): Way => ({
		box: 'receiver',
		lines,
		sign,
		control: timing.delay,
		standing: lines.map(line => receiverDelayMs(profile, set, line)),
	});
	const processorWay = (ids: readonly string[], sign: 1 | -1): Way[] => {
		const outputs = ids.map(id => lineOf(profile, id).output);
		if (!profile.bassProcessor || outputs.includes(undefined)) return [];
		const {stepMs, minimumMs, maximumMs} = profile.bassProcessor.delay;
		const lines = [...new Set(outputs as string[])];
		return [
			{
				box: 'processor',
				lines,
				sign,
				control: control(stepMs, minimumMs, maximumMs),
				standing: lines.map(line => (set ? (set.outputs?.[line]?.delayMs?.stepped ?? 0) : undefined)),
			},
		];
	};

	const feeds = (ids: readonly string[]) => [...new Set(ids.map(id => lineOf(profile, id).channel))];
	const isWholeFeed = (ids: readonly string[]) =>
		subs.every(({id, fedBy}) => !feeds(ids).includes(fedBy) || ids.includes(id));
	const others = subs.map(({id}) => id).filter(id => !moved.includes(id));
	if (others.length === 0) {
		const mains = profile.channels.map(({id}) => id as string).filter(id => !isLfe(id as ChannelId));
		return [receiverWay(feeds(moved), 1), ...processorWay(moved, 1), receiverWay(mains, -1)];
	}

	// Subs on one output move together and cannot be set apart there.
	const outputOf = (id: string) => lineOf(profile, id).output;
	const isApart = !moved.some(id => others.some(other => outputOf(id) === outputOf(other)));
	return [
		...(isApart ? processorWay(moved, 1) : []),
		...(isWholeFeed(moved) ? [receiverWay(feeds(moved), 1)] : []),
	];
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

function polarityActions(profile: Profile, moved: readonly string[]): BlendAction[] {
	const outputs = moved.map(id => lineOf(profile, id).output);
	if (profile.bassProcessor?.invertsOutputs && !outputs.includes(undefined))
		return [...new Set(outputs)].map(about => ({box: 'processor', about: about!, what: 'polarity'}));
	const feeds = [...new Set(moved.map(id => lineOf(profile, id).channel))];
	const isWhole = subsOf(profile).every(({id, fedBy}) => !feeds.includes(fedBy) || moved.includes(id));
	if (profile.receiver?.invertsSubs && isWhole)
		return feeds.map(about => ({box: 'receiver', about, what: 'polarity'}));
	return moved.map(about => ({box: 'sub', about, what: 'polarity'}));
}

/**
Which box does what, to add a delay to some subs, or all of them, and perhaps turn their polarity.

The first way that reaches the change within a step is taken: for all subs the receiver's line, else the processor's
outputs, else the mains by the opposite; for one sub against the others the processor first.

@param set - What stands in the boxes.
@param moved - Subs that move.
@param wantedMs - Change of their delay, ms.
@returns `undefined` where no box can delay them apart from the rest.
*/
export function planSetting(
	profile: Profile,
	set: SetInForce | undefined,
	moved: readonly string[],
	wantedMs: number,
	flip: boolean,
): BlendSetting | undefined {
	let best: {way: Way; addedMs: number} | undefined;
	for (const way of ways(profile, set, moved)) {
		const addedMs = way.sign * reachable(way, way.sign * wantedMs);
		const isBetter =
			!best || Math.abs(wantedMs - addedMs) < Math.abs(wantedMs - best.addedMs) - way.control.step;
		if (isBetter) best = {way, addedMs};
	}

	if (!best) return undefined;
	const {way, addedMs} = best;
	return {
		actions: [
			...delayActions(profile, way, way.sign * addedMs),
			...(flip ? polarityActions(profile, moved) : []),
		],
		addedMs,
		leftMs: wantedMs - addedMs,
	};
}

/** Whether a box turns the polarity of the subs, or only a switch on each of them. */
export function isTurnedByBox(profile: Profile, moved: readonly string[]): boolean {
	return polarityActions(profile, moved).every(({box}) => box !== 'sub');
}

/** Changes of delay that some box can make, and its step, ms. */
export function reachOf(
	profile: Profile,
	set: SetInForce | undefined,
	moved: readonly string[],
): {readonly lowMs: number; readonly highMs: number; readonly stepMs: number} {
	const found = ways(profile, set, moved);
	// Every way can do nothing, so that together they reach from the least to the most.
	const ends = found.flatMap(way => [-1e6, 1e6].map(far => way.sign * reachable(way, far)));
	const first = found[0];
	return {
		lowMs: Math.min(0, ...ends),
		highMs: Math.max(0, ...ends),
		stepMs: first?.control.step ?? 0,
	};
}
