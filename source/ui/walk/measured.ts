import type {Profile} from '../../profile/types.ts';
import {derived} from '../derived.ts';

/**
The profile without the walk's own notes. It stays the same object for as long as nothing else changes, so that keys
which only move cost no computation.
*/
export const measuredOf = derived(
	{entries: (profile: Profile) => Object.entries(profile).filter(isMeasured).flat()},
	({entries}) => {
		const pairs = entries.flatMap((value, index) => (index % 2 === 0 ? [[value, entries[index + 1]]] : []));
		return Object.fromEntries(pairs) as Profile;
	},
);

function isMeasured([key]: readonly [string, unknown]): boolean {
	return key !== 'walk';
}
