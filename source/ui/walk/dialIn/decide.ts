import {solvedSettings} from '../../../profile/ask/settings.ts';
import type {Profile, SettingsSet} from '../../../profile/types.ts';
import {freshSet} from './freshSet.ts';
import {type DialItem, dialItems} from './items.ts';

/**
The profile with the settings that its readings give, as a set of their own.

A tick stays where an item's values are those of the latest set. That set is kept if anything of it was typed in or
a reading was taken with it; otherwise the new one takes its place.
*/
export function withDecided(profile: Profile, decidedAt: string): Profile {
	const settings = profile.settings ?? [];
	const latest = solvedSettings(profile);
	const isNeeded =
		latest !== undefined &&
		((latest.dialledIn ?? []).length > 0 || profile.meter?.some(({inForce}) => inForce === latest.id));
	const kept = isNeeded ? settings : settings.filter(set => set !== latest);
	const decided: SettingsSet = {...freshSet(profile, decidedAt), ...nextName(kept, decidedAt)};
	return {...profile, settings: [...kept, {...decided, dialledIn: keptTicks(profile, latest, decided)}]};
}

/** The profile with items or single values of a set ticked, or their ticks taken off. A whole item is ticked by its id. */
export function withTicks(
	profile: Profile,
	set: SettingsSet,
	ticks: readonly string[],
	isDone: boolean,
): Profile {
	const items = dialItems(profile, {...set, dialledIn: []}, 1);
	const before = expanded(items, set.dialledIn ?? []);
	const changed = expanded(items, ticks);
	const now = isDone ? [...before, ...changed] : before.filter(tick => !changed.includes(tick));
	const dialledIn = joined(items, now);
	return {
		...profile,
		settings: profile.settings?.map(other => (other.id === set.id ? {...other, dialledIn} : other)),
	};
}

/** The profile with one item of a set ticked, or its tick taken off. */
export function withTick(profile: Profile, setId: string, itemId: string, isDone: boolean): Profile {
	const set = profile.settings?.find(({id}) => id === setId);
	return set ? withTicks(profile, set, [itemId], isDone) : profile;
}

/** Ticks of whole items as ticks of their values. */
function expanded(items: readonly DialItem[], ticks: readonly string[]): string[] {
	return ticks.flatMap(tick => items.find(({id}) => id === tick)?.values.map(value => value.tick) ?? [tick]);
}

/** Ticks of values as ticks of whole items, where all of one are ticked. */
function joined(items: readonly DialItem[], ticks: readonly string[]): string[] {
	const whole = items.filter(({values}) => values.every(({tick}) => ticks.includes(tick)));
	const covered = whole.flatMap(({values}) => values.map(({tick}) => tick));
	const order = (id: string) => ticks.findIndex(tick => tick.startsWith(`${id}.`));
	return [
		...whole.map(({id}) => id).toSorted((a, b) => order(a) - order(b)),
		...new Set(ticks.filter(tick => !covered.includes(tick))),
	];
}

function keptTicks(profile: Profile, latest: SettingsSet | undefined, decided: SettingsSet): string[] {
	if (!latest) return [];
	const before = new Map(
		dialItems(profile, latest).flatMap(({values}) => values.map(one => [one.tick, one])),
	);
	const items = dialItems(profile, decided);
	const kept = items.flatMap(({values}) =>
		values.filter(({tick, value}) => before.get(tick)?.isDone && before.get(tick)?.value === value),
	);
	return joined(
		items,
		kept.map(({tick}) => tick),
	);
}

/** A free id, and a name by the day; a second set of one day says so. */
function nextName(settings: readonly SettingsSet[], decidedAt: string): Pick<SettingsSet, 'id' | 'name'> {
	const day = `Set of ${decidedAt.slice(0, 10)}`;
	const before = settings.filter(({name}) => name?.startsWith(day)).length;
	const name = before === 0 ? day : `${day}, no. ${before + 1}`;
	for (let number = 1; ; number++) {
		const id = `set${number}`;
		if (settings.every(set => set.id !== id)) return {id, name};
	}
}
