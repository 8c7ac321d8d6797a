import {standingSettings} from '../../../profile/ask/settings.ts';
import {isLfe} from '../../../profile/channels.ts';
import {recordedLevelSigmaDb, usualMainsBand} from '../../../profile/practice.ts';
import type {Profile} from '../../../profile/types.ts';
import {median} from '../../../science/numeric/statistics.ts';
import {bassByRecording} from './bassByRecording.ts';
import {limitOf} from './limits.ts';
import type {ProofPlanItem, SettledRow} from './planItem.ts';

/** Two lines could be off against each other either way: three tell which. */
const leastLines = 3;

/**
Rows that a recording made with the settings in force closes: noise of single speakers, whose levels against each other it
tells, and bass where an earlier recording told speakers and subs apart. What lies beyond its limit stays open: the meter decides.

@returns By the row's key.
*/
export function settledByRecording(
	profile: Profile,
	items: readonly ProofPlanItem[],
): ReadonlyMap<string, SettledRow> {
	const decided = standingSettings(profile);
	const settled = new Map<string, SettledRow>();
	if (!decided) return settled;
	for (const seat of new Set(items.map(item => item.seat))) {
		const recording = profile.recordings?.findLast(
			each => each.seat === seat && each.inForce === decided.id && !each.state && !each.setAside,
		);
		if (!recording) continue;
		for (const [key, row] of bassByRecording(profile, recording, items)) settled.set(key, row);
		const levels = new Map(
			(profile.responses ?? []).flatMap(({recording: id, part = 'all', source, levelDb, setAside}) =>
				id === recording.id &&
				part === 'all' &&
				!setAside &&
				typeof source === 'string' &&
				levelDb !== undefined
					? [[source, levelDb] as const]
					: [],
			),
		);
		const rows = items.flatMap(item => {
			const [source] = item.source;
			const isOwn =
				item.seat === seat &&
				item.shows === 'level' &&
				item.source.length === 1 &&
				!isLfe(source!) &&
				item.signal.kind === 'pink' &&
				item.signal.fromHertz === usualMainsBand.fromHertz &&
				item.signal.toHertz === usualMainsBand.toHertz;
			const level = isOwn ? levels.get(source!) : undefined;
			return level === undefined ? [] : [{item, offDb: level - item.predicted.value}];
		});
		if (rows.length < leastLines) continue;
		const common = median(rows.map(({offDb}) => offDb));
		for (const {item, offDb} of rows) {
			const residualDb = offDb - common;
			const limitDb = limitOf(profile, item.signal, Math.hypot(recordedLevelSigmaDb, item.predicted.sigma));
			if (Math.abs(residualDb) > limitDb) continue;
			const date = recording.takenAt?.slice(0, 10);
			settled.set(item.key, {residualDb, ...(date !== undefined && {date})});
		}
	}

	return settled;
}
