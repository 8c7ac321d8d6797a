import {isStale} from '../../../profile/ask/digest.ts';
import {isSameRoom} from '../../../profile/ask/room.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import {finding} from '../../../profile/finding.ts';
import type {Profile} from '../../../profile/types.ts';
import {isSameValue} from './equality.ts';
import type {DiffFinding} from './facts.ts';
import {gearChanges} from './gear.ts';
import {levelChanges} from './levels.ts';
import {matchProfiles} from './match.ts';
import {tapeChanges} from './moved.ts';
import type {ProfileDiff, ProfileLabel} from './profileDiff.ts';
import {colouredLines, responseChanges} from './responses.ts';
import {settingChanges} from './settings.ts';
import type {Solved} from './solved.ts';

const labelOf = ({name, date, room}: Profile): ProfileLabel => ({name, date, room: room.name});

function remarksOn(older: Profile, newer: Profile, sameRoom: boolean): DiffFinding[] {
	const remarks: DiffFinding[] = [];
	if (isSameValue(older, newer)) remarks.push(finding('note', 'one-profile-twice', []));
	if (!sameRoom) {
		const facts = {olderRoom: older.room.name, newerRoom: newer.room.name};
		remarks.push(finding('doubt', 'different-rooms', [], facts));
	}

	if (newer.date < older.date) {
		const facts = {firstDate: older.date, secondDate: newer.date};
		remarks.push(finding('doubt', 'dates-run-backwards', [], facts));
	}

	for (const [profile, side] of [
		[older, 'older'],
		[newer, 'newer'],
	] as const) {
		if (!standingSettings(profile)) remarks.push(finding('note', 'settings-missing', [], {side}));
		if (isStale(profile)) remarks.push(finding('doubt', 'settings-stale', [], {side}));
		if (!profile.receiver) remarks.push(finding('note', 'receiver-missing', [], {side}));
	}

	return remarks;
}

/**
What differs between two profiles, and why each setting is another than before.

@param older - The earlier profile with what was solved from it.
@param newer - The later one.
@returns Matches of renamed things, changes of readings and gear, changes of settings split exactly into their causes;
larger changes first (see `changeScale`).
*/
export function diffProfiles(older: Solved, newer: Solved): ProfileDiff {
	const matching = matchProfiles(older.profile, newer.profile);
	const renamed = new Map(matching.matches.map(match => [match.older, match.newer]));
	const rename = (id: string) => renamed.get(id) ?? id;
	const settings = settingChanges(older, newer, matching.matches);
	const changes = [
		...gearChanges(older.profile, newer.profile, matching),
		...tapeChanges(older.profile, newer.profile, rename),
		...levelChanges(older.profile, newer.profile, rename),
		...responseChanges(older.profile, newer.profile, rename),
	].sort((a, b) => b.weight - a.weight);
	const coloured = colouredLines(older.profile, newer.profile, rename);
	const sameRoom = isSameRoom(older.profile, newer.profile);
	return {
		older: labelOf(older.profile),
		newer: labelOf(newer.profile),
		isSame: settings.length === 0 && changes.length === 0,
		sameRoom,
		matches: matching.matches,
		settings,
		changes,
		remarks: [
			...remarksOn(older.profile, newer.profile, sameRoom),
			...(coloured.length > 0 ? [finding('note', 'responses-coloured', coloured)] : []),
		],
	};
}
