import {subsOf} from '../../../profile/ask/subs.ts';
import type {MeterReading, Profile} from '../../../profile/types.ts';

/** Two groups of speakers whose sounds are to add up. The delay of the moved one is what gets set. */
export type BlendGroups = {
	readonly kind: 'subs' | 'mains';
	/** Channels with speakers of their own; or subs, where subs are matched to each other. */
	readonly still: readonly string[];
	/** Subs. */
	readonly moved: readonly string[];
};

/** What sounded in a reading, subs and other speakers apart, in the profile's order. */
export type Sounding = {readonly mains: readonly string[]; readonly subs: readonly string[]};

/**
What sounded in a reading. An LFE channel stands for every sub that it feeds.

@returns `undefined` where something is named that the profile does not hold.
*/
export function sounding(profile: Profile, source: MeterReading['source']): Sounding | undefined {
	const known = remembered.get(profile) ?? new Map<string, Sounding | undefined>();
	remembered.set(profile, known);
	const key = typeof source === 'string' ? source : source.join('+');
	if (!known.has(key)) known.set(key, lookUp(profile, source));
	return known.get(key);
}

/** There may be a hundred thousand readings, but only so many sources. */
const remembered = new WeakMap<Profile, Map<string, Sounding | undefined>>();

function lookUp(profile: Profile, source: MeterReading['source']): Sounding | undefined {
	const subs = subsOf(profile);
	const names = new Set(typeof source === 'string' ? [source] : source);
	const isSounding = (id: string, fedBy?: string) =>
		names.has(id) || (fedBy !== undefined && names.has(fedBy));
	const foundSubs = subs.filter(({id, fedBy}) => isSounding(id, fedBy)).map(({id}) => id);
	const fedBy = new Set<string>(subs.map(sub => sub.fedBy));
	const foundMains = profile.channels
		.map(({id}) => id as string)
		.filter(id => names.has(id) && !fedBy.has(id) && !foundSubs.includes(id));
	const known = new Set<string>([...subs.map(({id}) => id), ...fedBy, ...foundMains]);
	return [...names].every(name => known.has(name)) ? {mains: foundMains, subs: foundSubs} : undefined;
}

/** One name for a group, whatever the order it was listed in. */
export function groupKey(ids: readonly string[]): string {
	return ids.join('+');
}

/** Stable name of a pair of groups. */
export function pairId({still, moved}: BlendGroups): string {
	return `${groupKey(still)}|${groupKey(moved)}`;
}

/** The two groups of a reading in which both sound; `undefined` where only one does. */
export function groupsOfBoth({mains, subs}: Sounding): BlendGroups | undefined {
	if (mains.length > 0) return subs.length > 0 ? {kind: 'mains', still: mains, moved: subs} : undefined;
	if (subs.length < 2) return undefined;
	// Subs are matched one after the other, each to those before it.
	return {kind: 'subs', still: subs.slice(0, -1), moved: subs.slice(-1)};
}
