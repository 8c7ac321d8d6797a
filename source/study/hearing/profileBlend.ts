import {control, onGrid, receiverOf, timingControl} from '../../profile/ask/boxes.ts';
import {mainChannels, receiverDelayMs} from '../../profile/ask/lines.ts';
import {type SetInForce, settingsInForce, standingSettings} from '../../profile/ask/settings.ts';
import type {Profile, RecordedResponse} from '../../profile/types.ts';
import {type BlendFront, type BlendGroup, type RecordedBlend, recordedBlend} from './apart/recordedBlend.ts';
import {crossoverUnder} from './crossoverOf.ts';
import {responseOfPoints} from './keepRound.ts';
import {responseFrequencies} from './responses.ts';
import {type SubGroup, subGroups} from './visit.ts';

/** A blend found from recordings, with what to enter where. */
export type ProfileBlend = RecordedBlend & {
	readonly seats: readonly string[];
	/** The recording that it was found from, and the set of settings on top of which the changes are made. */
	readonly recording: string;
	readonly on: string | undefined;
	readonly groups: readonly GroupEntry[];
};

export type GroupEntry = {
	readonly subs: readonly string[];
	readonly box: SubGroup['box'];
	/** Channel of the receiver, or output of the processor. */
	readonly at: string;
	readonly addedMs: number;
	readonly isTurned: boolean;
	/** What that box shows before and after: a delay, ms, or a distance, metres. `from` is absent where nobody said. */
	readonly entry: 'delay' | 'distance';
	readonly from?: number;
	readonly to?: number;
};

/** Delays are looked for within three quarters of a period of what stands. */
const reachPeriods = 0.75;

/**
The blend that the profile's recordings ask for: one delay and polarity for each group of subs, over all recorded fronts and
seats, in the steps of the box that the group hangs on.

@returns `undefined` where mains and subs were not told apart by recordings made with one set of settings.
*/
export function profileBlend(profile: Profile): ProfileBlend | undefined {
	const kept = (profile.responses ?? []).filter(({points, setAside}) => points && !setAside);
	const mains = kept.filter(
		({part, source}) => part === 'main' && ['FL', 'FR', 'FC'].includes(source as string),
	);
	const groups = subGroups(profile);
	const recordingOf = ({recording}: RecordedResponse) => profile.recordings?.find(({id}) => id === recording);
	const latest = mains.at(-1) && recordingOf(mains.at(-1)!);
	if (!latest || groups.length === 0) return undefined;
	const set = settingsInForce(profile, latest) ?? standingSettings(profile);
	const sameSet = (each: RecordedResponse) =>
		JSON.stringify(recordingOf(each)?.inForce) === JSON.stringify(latest.inForce);
	const fronts: BlendFront[] = [];
	for (const main of newestOf(mains.filter(sameSet))) {
		const crossover = crossoverUnder(profile, set, main.source as string);
		// A front with another crossover gets another share of the subs.
		const subs = groups.map(group =>
			kept.findLast(
				each =>
					each.part === 'subs' &&
					each.recording === main.recording &&
					[each.source].flat().join('+') === group.subs.join('+') &&
					(each.crossoverHertz === undefined || each.crossoverHertz === crossover),
			),
		);
		if (subs.some(each => !each) || crossover === undefined) continue;
		fronts.push({
			channel: main.source as string,
			seat: main.seat,
			weight: profile.seats.find(({id}) => id === main.seat)?.weight ?? 1,
			crossoverHertz: crossover,
			main: responseOfPoints(main.points!),
			groups: subs.map(each => responseOfPoints(each!.points!)),
		});
	}

	if (fronts.length === 0 || fronts.every(({weight}) => weight === 0)) return undefined;
	const reachMs = (1000 * reachPeriods) / Math.min(...fronts.map(({crossoverHertz}) => crossoverHertz));
	// A sub without a switch for it is turned by exchanging its leads.
	const earlierMs = Math.min(reachMs, mainsRoomMs(profile, set));
	const boxes = groups.map(group => ({...boxOf(profile, group, set, reachMs, earlierMs), canTurn: true}));
	const best = recordedBlend(fronts, boxes, responseFrequencies());
	return {
		...best,
		seats: [...new Set(fronts.map(({seat}) => seat))],
		recording: latest.id,
		on: typeof latest.inForce === 'string' ? latest.inForce : undefined,
		groups: groups.map(({subs, box, at}, index) => {
			const {addedMs, isTurned} = best.changes[index]!;
			const {standingMs, entryOf, entry, isWithin} = boxes[index]!;
			return {
				subs,
				box,
				at,
				addedMs,
				isTurned,
				entry,
				...(standingMs !== undefined &&
					isWithin(standingMs + addedMs) && {
						from: entryOf(standingMs),
						to: entryOf(standingMs + addedMs),
					}),
			};
		}),
	};
}

/** A profile whose recording holds the blend that was found from it, so that nobody has to search again. */
export function withFoundBlend(profile: Profile, blend: ProfileBlend | undefined): Profile {
	if (!blend) return profile;
	const groups = blend.groups.map(({subs, addedMs, isTurned}) => ({
		subs: [...subs],
		addedMs: Number(addedMs.toFixed(4)),
		isTurned,
	}));
	const found = {groups, gainDb: Number(blend.gainDb.toFixed(2))};
	return {
		...profile,
		recordings: profile.recordings?.map(each =>
			each.id === blend.recording ? {...each, blend: found} : each,
		),
	};
}

/** The newest response of each channel at each seat. */
function newestOf(responses: readonly RecordedResponse[]): RecordedResponse[] {
	return [...new Map(responses.map(each => [`${String(each.source)} ${each.seat}`, each])).values()];
}

/** How much later the receiver can still make every speaker, ms. */
function mainsRoomMs(profile: Profile, set: SetInForce | undefined): number {
	const {maximum} = timingControl(receiverOf(profile).receiver).delay;
	const standing = mainChannels(profile).map(({id}) => receiverDelayMs(profile, set, id));
	return Math.max(0, Math.min(...standing.map(ms => (ms === undefined ? 0 : maximum - ms))));
}

/** A group's box: whole steps that it can add to what stands, within reach, and how it shows them. */
function boxOf(
	profile: Profile,
	{box, at}: SubGroup,
	set: SetInForce | undefined,
	reachMs: number,
	earlierMs: number,
): Omit<BlendGroup, 'canTurn'> & {
	readonly standingMs: number | undefined;
	readonly entry: 'delay' | 'distance';
	readonly entryOf: (delayMs: number) => number;
	/** Whether the box itself can delay by so much. */
	readonly isWithin: (delayMs: number) => boolean;
} {
	const processor = profile.bassProcessor;
	const isProcessor = box === 'processor' && processor !== undefined;
	const timing = timingControl(receiverOf(profile).receiver);
	const own = isProcessor
		? control(processor.delay.stepMs, processor.delay.minimumMs, processor.delay.maximumMs)
		: timing.delay;
	const {step, minimum, maximum} = own;
	const standingMs = isProcessor
		? (set?.outputs?.[at]?.delayMs?.stepped ?? 0)
		: receiverDelayMs(profile, set, at);
	// Where nobody says what stands, every step within reach may be there.
	const standing = standingMs ?? (minimum + maximum) / 2;
	// Earlier than its box can, by so much as all speakers can be later.
	const low = Math.ceil((Math.max(-reachMs, minimum - standing - earlierMs) - 1e-9) / step);
	const high = Math.floor((Math.min(reachMs, maximum - standing) + 1e-9) / step);
	const steps = Array.from({length: Math.max(0, high - low + 1)}, (_, index) => (low + index) * step);
	return {
		addableMs: steps.includes(0) ? steps : [0, ...steps],
		standingMs,
		entry: isProcessor ? 'delay' : timing.kind,
		isWithin: delayMs => delayMs >= minimum - 1e-9 && delayMs <= maximum + 1e-9,
		entryOf: delayMs => (isProcessor ? onGrid(own, delayMs) : timing.toEntry(delayMs)),
	};
}
