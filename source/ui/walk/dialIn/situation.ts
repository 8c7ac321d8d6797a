import {isComputedFrom} from '../../../profile/ask/digest.ts';
import {solvedSettings} from '../../../profile/ask/settings.ts';
import {channelNames} from '../../../profile/channels.ts';
import type {ChannelId, ChannelSetting, Profile, SettingsSet} from '../../../profile/types.ts';
import {derived} from '../../derived.ts';
import {measuredOf} from '../measured.ts';
import {solutionOf} from '../solution.ts';
import {freshSet} from './freshSet.ts';
import {masterTick} from './inForceBefore.ts';
import {type DialItem, dialItems} from './items.ts';

/**
- `nothing`: nothing was measured that a box could take.
- `undecided`: values are there, no set of them was decided. `items` are what they would be.
- `stale`: a set was decided, and what was entered since gives other values.
- `decided`: the set holds.
*/
export type Situation =
	| {readonly kind: 'nothing'}
	| {
			readonly kind: 'undecided';
			readonly items: readonly DialItem[];
			/** Names of channels that have no timing, or no trim, because readings are missing. */
			readonly untimed: readonly string[];
			readonly untrimmed: readonly string[];
	  }
	| {
			readonly kind: 'stale';
			readonly set: SettingsSet;
			readonly items: readonly DialItem[];
			/** Titles of the items that would get other values. */
			readonly differing: readonly string[];
	  }
	| {readonly kind: 'decided'; readonly set: SettingsSet; readonly items: readonly DialItem[]};

/** How far the settings are: decided or not, and whether what was decided still follows from the readings. */
export const situationOf: (profile: Profile) => Situation = derived({measured: measuredOf}, ({measured}) =>
	findSituation(measured),
);

function findSituation(profile: Profile): Situation {
	const set = solvedSettings(profile);
	const fresh = freshSet(profile);
	const masterChangeDb = solutionOf(profile).masterVolumeTurnDb;
	const freshItems = dialItems(profile, fresh, masterChangeDb);
	if (!set) return undecided(profile, fresh, freshItems);
	const isCurrent = set.inputsHash !== undefined && isComputedFrom(profile, set.inputsHash);
	const items = dialItems(profile, set, isCurrent ? masterChangeDb : undefined);
	if (isCurrent || freshItems.length === 0) return {kind: 'decided', set, items};
	// A turn of the master from where it stood while metering says nothing of where it stands now.
	const differing = freshItems
		.filter(({id}) => id !== masterTick || set.masterVolumeDb !== undefined)
		.filter(item => valuesText(item) !== valuesText(items.find(({id}) => id === item.id)));
	if (differing.length === 0) return {kind: 'decided', set, items};
	return {kind: 'stale', set, items, differing: differing.map(({title}) => title)};
}

function undecided(profile: Profile, fresh: SettingsSet, items: readonly DialItem[]): Situation {
	const without = (isThere: (setting: ChannelSetting) => boolean) =>
		profile.channels.map(({id}) => id).filter(id => !isThere(fresh.channels[id] ?? {}));
	const untimed = without(
		({delayMs, distanceMetres}) => delayMs !== undefined || distanceMetres !== undefined,
	);
	const untrimmed = without(({trimDb}) => trimDb !== undefined);
	const count = profile.channels.length;
	// Crossovers may be suggested from data sheets alone; a round starts with something measured.
	if (untimed.length === count && untrimmed.length === count) return {kind: 'nothing'};
	const names = (ids: readonly ChannelId[]) => ids.map(id => channelNames[id]);
	return {kind: 'undecided', items, untimed: names(untimed), untrimmed: names(untrimmed)};
}

/** The values of an item as one text, to tell whether two are the same to the step. */
export function valuesText(item: DialItem | undefined): string {
	return (item?.values ?? []).map(({label, value}) => `${label} ${value}`).join('; ');
}
