import {receiverDelayMs} from '../../../profile/ask/lines.ts';
import {processorOf, subsOf} from '../../../profile/ask/subs.ts';
import type {ChannelId, InForce, Profile, SettingsSet} from '../../../profile/types.ts';

export type StandingSet = SettingsSet | Exclude<InForce, string>;

/** What a set of settings does to one group of speakers; means over the group. */
export type GroupStanding = {
	/** Delay that the boxes add, ms; only differences between groups mean anything where distances are entered. */
	readonly delayMs: number | undefined;
	readonly gainDb: number;
	readonly inverted: boolean;
	/** Crossovers and what sets the members apart from each other, as one text: readings compare only where it is the same. */
	readonly balance: string;
};

function memberStanding(profile: Profile, set: StandingSet, id: string) {
	const sub = subsOf(profile).find(candidate => candidate.id === id);
	const line = (sub?.fedBy ?? id) as ChannelId;
	const setting = set.channels[line];
	const output = sub && processorOf(profile, sub) ? set.outputs?.[sub.processorOutput!] : undefined;
	const receiverMs = receiverDelayMs(profile, set, line);
	return {
		delayMs: receiverMs === undefined ? undefined : receiverMs + (output?.delayMs?.stepped ?? 0),
		gainDb: (setting?.trimDb?.stepped ?? 0) + (output?.gainDb?.stepped ?? 0),
		inverted: (setting?.polarityInverted ?? false) !== (output?.polarityInverted ?? false),
		crossover: sub ? '' : String(setting?.crossoverHertz ?? ''),
	};
}

/** What a set of settings does to a group of speakers. */
export function groupStanding(profile: Profile, set: StandingSet, ids: readonly string[]): GroupStanding {
	const sets = remembered.get(profile) ?? new WeakMap<StandingSet, Map<string, GroupStanding>>();
	remembered.set(profile, sets);
	const groups = sets.get(set) ?? new Map<string, GroupStanding>();
	sets.set(set, groups);
	const key = ids.join('+');
	const known = groups.get(key) ?? standingOf(profile, set, ids);
	groups.set(key, known);
	return known;
}

/** Asked for at every reading; many readings share a set. */
const remembered = new WeakMap<Profile, WeakMap<StandingSet, Map<string, GroupStanding>>>();

function standingOf(profile: Profile, set: StandingSet, ids: readonly string[]): GroupStanding {
	const members = ids.map(id => memberStanding(profile, set, id));
	const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
	const delays = members.flatMap(({delayMs}) => (delayMs === undefined ? [] : [delayMs]));
	const [first] = members;
	const apart = members.map(({delayMs, gainDb, inverted, crossover}) => [
		crossover,
		((delayMs ?? 0) - (first?.delayMs ?? 0)).toFixed(3),
		(gainDb - (first?.gainDb ?? 0)).toFixed(2),
		inverted !== first?.inverted,
	]);
	return {
		delayMs: delays.length === members.length && delays.length > 0 ? mean(delays) : undefined,
		gainDb: mean(members.map(({gainDb}) => gainDb)),
		inverted: first?.inverted ?? false,
		balance: JSON.stringify(apart),
	};
}
