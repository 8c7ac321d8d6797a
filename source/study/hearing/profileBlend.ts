import {settingsInForce, standingSettings} from '../../profile/ask/settings.ts';
import type {Profile, RecordedResponse, Recording} from '../../profile/types.ts';
import {type BlendFront, type RecordedBlend, recordedBlend} from './apart/recordedBlend.ts';
import {blendVerdict} from './blendVerdict.ts';
import {crossoverUnder} from './crossoverOf.ts';
import {groupBox, mainsRoomMs} from './groupBox.ts';
import {holdsBlend} from './holdsBlend.ts';
import {responseOfPoints} from './keepRound.ts';
import {responseFrequencies} from './responses.ts';
import {allSubsGroup, type SubGroup, subGroups} from './visit.ts';

/** A blend found from recordings, with what to enter where. */
export type ProfileBlend = RecordedBlend & {
	readonly seats: readonly string[];
	/** The recording that it was found from, and the set of settings on top of which the changes are made. */
	readonly recording: string;
	/** From playings with one change, or from one playing by its LFE sweep: then all subs move together. */
	readonly by: 'change' | 'lfe';
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
	const recordingOf = ({recording}: RecordedResponse) => profile.recordings?.find(({id}) => id === recording);
	const latest = latestApart(
		profile,
		mains.flatMap(main => recordingOf(main) ?? []),
	);
	const by = latest?.apartBy ?? 'change';
	const groups = by === 'change' ? subGroups(profile) : [allSubsGroup(profile) ?? []].flat();
	if (!latest || groups.length === 0) return undefined;
	const set = settingsInForce(profile, latest) ?? standingSettings(profile);
	const sameSet = (each: RecordedResponse) =>
		JSON.stringify(recordingOf(each)?.inForce) === JSON.stringify(latest.inForce) &&
		(recordingOf(each)?.apartBy ?? 'change') === by;
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
	const boxes = groups.map(group => ({...groupBox(profile, group, set, reachMs, earlierMs), canTurn: true}));
	const best = recordedBlend(fronts, boxes, responseFrequencies());
	return {
		...best,
		seats: [...new Set(fronts.map(({seat}) => seat))],
		recording: latest.id,
		by,
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

/**
The recording that a blend is looked for from: the newest in which mains and subs were told apart, one with a change before
one without in the same settings. One playing alone that holds a blend found earlier verifies that one and asks for nothing
new; and once such a blend was put back, one playing alone is not asked again.
*/
function latestApart(profile: Profile, apart: readonly Recording[]): Recording | undefined {
	const latest = apart.at(-1);
	if (latest?.apartBy !== 'lfe') return latest;
	const better = apart.findLast(
		each => each.apartBy !== 'lfe' && JSON.stringify(each.inForce) === JSON.stringify(latest.inForce),
	);
	if (better) return better;
	const all = profile.recordings ?? [];
	const isOver = all.slice(0, all.indexOf(latest)).some(found => {
		if (found.setAside || !found.blend?.groups.some(({addedMs, isTurned}) => addedMs !== 0 || isTurned))
			return false;
		return (
			holdsBlend(profile, found, latest) ||
			(found.apartBy === 'lfe' && blendVerdict(profile, found)?.isKept === false)
		);
	});
	return isOver ? undefined : latest;
}

/** The newest response of each channel at each seat. */
function newestOf(responses: readonly RecordedResponse[]): RecordedResponse[] {
	return [...new Map(responses.map(each => [`${String(each.source)} ${each.seat}`, each])).values()];
}
