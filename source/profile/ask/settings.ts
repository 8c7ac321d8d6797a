import type {ChannelId, ChannelSetting, InForce, MeterReading, Profile, SettingsSet} from '../types.ts';

/** What can stand in the boxes: a stored set, or one written into a reading. */
export type SetInForce = SettingsSet | Exclude<InForce, string>;

type WithOrigin = {readonly origin?: unknown};

/** A profile, or parsed JSON that nobody checked but for the list being one of objects. */
type WithSets<Stored> = {readonly settings?: readonly Stored[] | undefined};

/**
The settings that stood when a meter reading was taken.

@returns The stored set that the reading names, or the set written into the reading itself; `undefined` where the
reading says nothing, or names a set that the profile does not hold.
*/
export function settingsInForce(
	profile: Pick<Profile, 'settings'>,
	{inForce}: Pick<MeterReading, 'inForce'>,
): SetInForce | undefined {
	if (typeof inForce !== 'string') return inForce;
	return profile.settings?.find(({id}) => id === inForce);
}

/**
The set that was decided: the last one solved here or entered by hand. One that was merely found is nobody's decision.

@returns `undefined` where nothing was decided yet.
*/
export function decidedSettings<Stored extends WithOrigin>({
	settings = [],
}: WithSets<Stored>): Stored | undefined {
	return settings.findLast(({origin}) => origin !== 'found');
}

/**
The set that most likely stands in the boxes: the decided one, else the last one found.

@returns `undefined` where the profile stores no settings.
*/
export function standingSettings<Stored extends WithOrigin>(profile: WithSets<Stored>): Stored | undefined {
	return decidedSettings(profile) ?? profile.settings?.at(-1);
}

/** The last set that was computed here: the one that is ticked off as it is typed in. */
export function solvedSettings<Stored extends WithOrigin>({
	settings = [],
}: WithSets<Stored>): Stored | undefined {
	return settings.findLast(({origin}) => origin === 'solved');
}

/** What a set holds for a channel, whatever the id: of a channel that the receiver does not have it holds nothing. */
export function settingFor(
	set: Pick<SetInForce, 'channels'> | undefined,
	id: string,
): ChannelSetting | undefined {
	return set?.channels[id as ChannelId];
}

/** The master volume that most of these readings were taken at, dB, and of several the softest; `undefined` where none says. */
export function usualMasterDb(
	profile: Pick<Profile, 'settings'>,
	readings: Iterable<Pick<MeterReading, 'inForce'>>,
): number | undefined {
	const sets = new Map((profile.settings ?? []).map(set => [set.id, set]));
	const counts = new Map<number, number>();
	for (const {inForce} of readings) {
		const master = (typeof inForce === 'string' ? sets.get(inForce) : inForce)?.masterVolumeDb;
		if (master !== undefined) counts.set(master, (counts.get(master) ?? 0) + 1);
	}

	const [usual] = [...counts].sort(([one, many], [other, more]) => more - many || one - other);
	return usual?.[0];
}
