import {decidedSettings} from '../../profile/ask/settings.ts';
import type {Profile} from '../../profile/types.ts';

/**
A new profile that starts from an older one: the same room, seats, speakers, subs and boxes, nothing measured yet.
What was dialled in last stays as a set of its own, so that the round can start from it; the rest of the readings
stay in the older file.
*/
export function startFrom(older: Profile, name: string, date: string): Profile {
	const {walk, note, responses, ...kept} = older;
	const last = decidedSettings(older);
	const roomTape = (older.tape ?? []).filter(({from, to}) => isPlane(from) && isPlane(to));
	return {
		...kept,
		name,
		date,
		tape: roomTape,
		meter: [],
		settings: last
			? [{...last, id: 'last', origin: 'entered', name: last.name ?? `Set of ${older.date}`, dialledIn: []}]
			: [],
	} as Profile;
}

function isPlane(end: string): boolean {
	return end.startsWith('wall:') || end === 'floor' || end === 'ceiling';
}
