import type {ChannelId, ChannelSetting, OutputSetting, Profile, SettingsSet} from '../../../profile/types.ts';

/** Ticks of settings that belong to no channel or output. */
export const masterTick = 'masterVolume';
export const lfeTick = 'lfeLowPass';

/**
What stands in the boxes before a set is typed in, item by item: from the latest earlier set in which the item was
ticked, or that was found there or typed in by hand.
*/
export type InForceBefore = {
	readonly channel: (id: ChannelId) => ChannelSetting | undefined;
	readonly output: (id: string) => OutputSetting | undefined;
	readonly masterVolumeDb?: number;
	readonly lfeLowPassHertz?: number;
};

/** @param set - A set of the profile, or one that is not in it yet and so comes after all. */
export function inForceBefore({settings = []}: Profile, set: SettingsSet): InForceBefore {
	const at = settings.findIndex(({id}) => id === set.id);
	const earlier = (at < 0 ? settings : settings.slice(0, at)).toReversed();
	const latest = <Value>(tick: string, pick: (earlierSet: SettingsSet) => Value | undefined) =>
		earlier
			.filter(({origin, dialledIn}) => origin !== 'solved' || dialledIn?.includes(tick))
			.map(pick)
			.find(value => value !== undefined);
	return {
		channel: id => latest(id, ({channels}) => channels[id]),
		output: id => latest(id, ({outputs}) => outputs?.[id]),
		masterVolumeDb: latest(masterTick, ({masterVolumeDb}) => masterVolumeDb),
		lfeLowPassHertz: latest(lfeTick, ({lfeLowPassHertz}) => lfeLowPassHertz),
	};
}
