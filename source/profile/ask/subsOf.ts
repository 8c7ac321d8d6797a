import {isLfe} from '../channels.ts';
import type {Profile, Sub} from '../types.ts';

/**
The subs of a profile. An LFE channel that names no sub drives one all the same: it counts as a sub of the channel's own name.
*/
export function subsOf(profile: Profile): readonly Sub[] {
	const known = remembered.get(profile) ?? listSubs(profile);
	remembered.set(profile, known);
	return known;
}

/** Asked for at every reading. */
const remembered = new WeakMap<Profile, readonly Sub[]>();

function listSubs(profile: Profile): readonly Sub[] {
	const subs = profile.subs ?? [];
	const implied = profile.channels.flatMap(({id}): Sub[] =>
		isLfe(id) && !subs.some(({fedBy}) => fedBy === id) ? [{id, name: `Sub on ${id}`, fedBy: id}] : [],
	);
	return implied.length === 0 ? subs : [...subs, ...implied];
}
