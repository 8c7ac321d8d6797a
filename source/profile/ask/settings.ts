import type {InForce, MeterReading, Profile, SettingsSet} from '../types.ts';

/**
The settings that stood when a meter reading was taken.

@returns The stored set that the reading names, or the set written into the reading itself; `undefined` where the
reading says nothing, or names a set that the profile does not hold.
*/
export function settingsInForce(
	profile: Profile,
	reading: Pick<MeterReading, 'inForce'>,
): SettingsSet | Exclude<InForce, string> | undefined {
	const {inForce} = reading;
	if (typeof inForce !== 'string') return inForce;
	return profile.settings?.find(set => set.id === inForce);
}

/**
The set that counts as dialled in: the last one solved or entered, else the last one found.

@returns `undefined` where the profile stores no settings.
*/
export function decidedSettings(profile: Profile): SettingsSet | undefined {
	const sets = profile.settings ?? [];
	return sets.findLast(set => set.origin !== 'found') ?? sets.at(-1);
}
