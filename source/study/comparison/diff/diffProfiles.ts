import {isStale} from '../../../profile/ask/digest.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import type {Profile} from '../../../profile/types.ts';
import type {Remark} from '../../calibration/result.ts';
import {isSameValue} from './equality.ts';
import {gearChanges} from './gear.ts';
import {levelChanges} from './levels.ts';
import {matchProfiles} from './match.ts';
import {tapeChanges} from './moved.ts';
import type {ProfileDiff, ProfileLabel} from './profileDiff.ts';
import {settingChanges} from './settings.ts';
import type {Solved} from './solved.ts';

const labelOf = ({name, date, room}: Profile): ProfileLabel => ({name, date, room: room.name});

function remarksOn(older: Profile, newer: Profile, sameRoom: boolean): Remark[] {
	const remarks: Remark[] = [];
	if (isSameValue(older, newer)) {
		remarks.push({
			kind: 'note',
			code: 'one-profile-twice',
			text: 'The two files hold the same profile, word for word. Was the other one meant?',
		});
	}

	if (!sameRoom) {
		remarks.push({
			kind: 'doubt',
			code: 'different-rooms',
			text: `The rooms differ: ${older.room.name} and ${newer.room.name}. Channels, readings and settings are compared all the same; “moved” then means “stands elsewhere”.`,
		});
	}

	if (newer.date < older.date) {
		remarks.push({
			kind: 'doubt',
			code: 'dates-run-backwards',
			text: `The second profile, ${newer.date}, is older than the first, ${older.date}. “Before” and “after” follow the order of the files.`,
		});
	}

	for (const [profile, word] of [
		[older, 'older'],
		[newer, 'newer'],
	] as const) {
		if (!standingSettings(profile)) {
			remarks.push({
				kind: 'note',
				code: 'settings-missing',
				about: word,
				text: `The ${word} profile stores no settings. What its readings ask for is compared instead.`,
			});
		}

		if (isStale(profile)) {
			remarks.push({
				kind: 'doubt',
				code: 'settings-stale',
				about: word,
				text: `The ${word} profile’s settings were computed before its latest readings or gear. What that changes counts as unexplained.`,
			});
		}

		if (!profile.receiver) {
			remarks.push({
				kind: 'note',
				code: 'receiver-missing',
				about: word,
				text: `The ${word} profile describes no receiver. Its settings have no steps, so their changes stay unexplained.`,
			});
		}
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
	].sort((a, b) => b.weight - a.weight);
	const sameRoom =
		older.profile.room.name.trim().toLowerCase() === newer.profile.room.name.trim().toLowerCase();
	return {
		older: labelOf(older.profile),
		newer: labelOf(newer.profile),
		isSame: settings.length === 0 && changes.length === 0,
		sameRoom,
		matches: matching.matches,
		settings,
		changes,
		remarks: remarksOn(older.profile, newer.profile, sameRoom),
	};
}
