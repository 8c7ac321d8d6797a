import {decidedSettings, standingSettings} from './ask/settings.ts';
import {isPlane} from './planes.ts';
import type {Profile, SettingsSet} from './types.ts';

export type StartFrom = {
	readonly name: string;
	/** ISO date of the new round. */
	readonly date: string;
	/** Whether readings and curves come along; they belong to the old arrangement as a rule. */
	readonly readings: 'keep' | 'drop';
};

/**
A new round that starts from an older profile: room, seats, channels, subs and kit stay.

Without the readings nothing counts as measured: the air, the levels, the recordings, the note and all lengths stay in
the older file, but for those from wall to wall and floor to ceiling: the room did not move. The settings that most
likely stand in the boxes stay as the one set `last`, as found: known while measuring again, but neither decided for
this arrangement nor something to type in.
*/
export function startFrom(old: Profile, {name, date, readings}: StartFrom): Profile {
	const {walk: _walk, ...kept} = structuredClone(old);
	if (readings === 'keep') return {...kept, name, date};
	const {note: _note, air: _air, responses: _responses, recordings: _recordings, ...rest} = kept;
	return {
		...rest,
		name,
		date,
		tape: (rest.tape ?? []).filter(({from, to}) => isPlane(from) && isPlane(to)),
		meter: [],
		settings: foundAgain(old),
	} as Profile;
}

/** The old profile's last settings as found ones, without what ties them to its readings. */
function foundAgain(old: Profile): SettingsSet[] {
	const last = standingSettings(old);
	if (!last) return [];
	const {inputsHash: _hash, dialledIn: _ticks, ...rest} = structuredClone(last);
	const how = decidedSettings(old) ? 'decided' : 'found';
	return [{...rest, id: 'last', name: `As ${how} on ${old.date}`, origin: 'found'} as SettingsSet];
}
