import {decidedSettings} from '../../profile/ask/settings.ts';
import {withMoved} from '../../profile/moved.ts';
import {startFrom} from '../../profile/startFrom.ts';
import type {Profile, SettingsSet} from '../../profile/types.ts';

export type Carried = {
	readonly name: string;
	/** Day of the new round, YYYY-MM-DD. */
	readonly date: string;
	/** Ids of what stands elsewhere now, or is new. */
	readonly moved: readonly string[];
};

/** Questions that a round from an older one does not ask again: cables, walls and further seats are as they were. */
const notAgain = ['tape:links:none', 'tape:walls:no', 'meter:sound:receiver', 'meter:seats:no'];

/**
A new round from an older profile: every reading comes along with its day, and what stands in the boxes as it was
decided. What was read of moved things is set aside, and so is asked again; it shows beside its field.
*/
export function startNextRound(old: Profile, {name, date, moved}: Carried): Profile {
	const copy = startFrom(old, {name, date, readings: 'keep'});
	const dated = <Reading extends {readonly takenAt?: string | undefined}>(reading: Reading): Reading =>
		reading.takenAt === undefined ? {...reading, takenAt: old.date} : reading;
	const carried: Profile = {
		...copy,
		...(copy.tape && {tape: copy.tape.map(dated)}),
		...(copy.meter && {meter: copy.meter.map(dated)}),
		settings: withSession(
			(copy.settings ?? []).map(set => datedSet(set, old.date)),
			date,
		),
		walk: {
			startedFrom: old.date,
			answered: [
				...(old.walk?.answered ?? []),
				...notAgain.filter(
					answer => !(old.walk?.answered ?? []).some(known => isSameQuestion(known, answer)),
				),
			],
		},
	};
	return moved.reduce(withMoved, carried);
}

function isSameQuestion(one: string, other: string): boolean {
	return one.slice(0, one.lastIndexOf(':')) === other.slice(0, other.lastIndexOf(':'));
}

/** Sets are told apart by their day: those of every year begin with number one. */
function datedSet(set: SettingsSet, date: string): SettingsSet {
	return /^Set \d+$/.test(set.name ?? '')
		? {...set, name: `Set of ${set.decidedAt?.slice(0, 10) ?? date}`}
		: set;
}

/** The sets, and what stands in the boxes today as one more: new readings are taken under it. */
function withSession(sets: readonly SettingsSet[], date: string): SettingsSet[] {
	const last = decidedSettings({settings: sets} as Profile);
	if (!last) return [...sets];
	const {inputsHash: _, dialledIn: __, ...values} = last;
	let id = 'found';
	for (let number = 2; sets.some(set => set.id === id); number++) id = `found${number}`;
	return [...sets, {...values, id, name: `As it stood on ${date}`, origin: 'found', copyOf: last.id}];
}

/** The day that the round's older readings are from; undefined where it was begun from nothing. */
export function startedFrom(profile: Profile): string | undefined {
	return profile.walk?.startedFrom;
}

/** Whether a reading was taken in this round. */
export function isOfThisRound(profile: Profile, {takenAt}: {readonly takenAt?: string | undefined}): boolean {
	return startedFrom(profile) === undefined || takenAt === undefined || takenAt.slice(0, 10) >= profile.date;
}

/** Says that a value does not count; what stood elsewhere in an older round says so by its day. */
export function asideText(
	profile: Profile,
	reading: {readonly takenAt?: string | undefined; readonly setAside?: boolean | undefined},
): string {
	if (!reading.setAside) return '';
	return isOfThisRound(profile, reading) ? ' (set aside)' : ' (before it moved)';
}

/** The day of a reading that came along, for its value in grey; empty for one of this round. */
export function carriedText(profile: Profile, reading: {readonly takenAt?: string | undefined}): string {
	return isOfThisRound(profile, reading) ? '' : ` on ${reading.takenAt!.slice(0, 10)}`;
}
