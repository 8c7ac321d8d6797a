import type {Profile, SettingsSet} from './types.ts';

export type StartFrom = {
	readonly name: string;
	/** ISO date of the new round. */
	readonly date: string;
	/** Whether tape, meter and curves come along; they belong to the old arrangement as a rule. */
	readonly readings: 'keep' | 'drop';
};

/** The settings that most likely stand in the boxes: those decided last, else those found last. */
function lastSettings(sets: readonly SettingsSet[] = []): SettingsSet | undefined {
	return sets.findLast(({origin}) => origin !== 'found') ?? sets.at(-1);
}

/**
A new round that starts from an older profile: room, seats, channels, subs and kit stay. Without the readings, the settings
decided last stay as the set `found`, so that the trims in force are known while measuring again.
*/
export function startFrom(old: Profile, {name, date, readings}: StartFrom): Profile {
	const copy = {...structuredClone(old), name, date};
	delete copy.walk;
	if (readings === 'keep') return copy;
	delete copy.air;
	delete copy.responses;
	const last = lastSettings(copy.settings);
	const found: SettingsSet[] = [];
	if (last) {
		const {inputsHash: _, dialledIn: __, ...rest} = last;
		found.push({...rest, id: 'found', name: `As decided on ${old.date}`, origin: 'found'});
	}

	return {...copy, tape: [], meter: [], settings: found};
}
