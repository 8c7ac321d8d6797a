import {solvedSettings} from '../../../profile/ask/settings.ts';
import type {Profile, SettingsSet} from '../../../profile/types.ts';
import {freshSet} from './freshSet.ts';
import {dialItems} from './items.ts';
import {valuesText} from './situation.ts';

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
	const decided: SettingsSet = {...freshSet(profile, decidedAt), ...nextName(kept)};
	return {...profile, settings: [...kept, {...decided, dialledIn: keptTicks(profile, latest, decided)}]};
}

/** The profile with one item of a set ticked, or its tick taken off. */
export function withTick(profile: Profile, setId: string, itemId: string, isDone: boolean): Profile {
	const ticked = (set: SettingsSet): SettingsSet => {
		const others = (set.dialledIn ?? []).filter(id => id !== itemId);
		return {...set, dialledIn: isDone ? [...others, itemId] : others};
	};

	return {...profile, settings: profile.settings?.map(set => (set.id === setId ? ticked(set) : set))};
}

function keptTicks(profile: Profile, latest: SettingsSet | undefined, decided: SettingsSet): string[] {
	if (!latest) return [];
	const before = new Map(dialItems(profile, latest).map(item => [item.id, item]));
	return dialItems(profile, decided)
		.filter(item => before.get(item.id)?.isDone && valuesText(before.get(item.id)) === valuesText(item))
		.map(({id}) => id);
}

function nextName(settings: readonly SettingsSet[]): Pick<SettingsSet, 'id' | 'name'> {
	for (let number = 1; ; number++) {
		const id = `set${number}`;
		if (settings.every(set => set.id !== id)) return {id, name: `Set ${number}`};
	}
}
