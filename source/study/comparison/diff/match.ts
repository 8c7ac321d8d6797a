import {channelNames, isOverhead} from '../../../profile/channels.ts';
import type {Profile} from '../../../profile/types.ts';
import {isSameValue} from './equality.ts';
import type {Match, ThingKind} from './profileDiff.ts';
import {pairKey, tapeMeans} from './tapeMeans.ts';

type Thing = {readonly id: string; readonly name: string; readonly data: unknown};
export type Unmatched = {readonly kind: ThingKind; readonly id: string; readonly name: string};
export type Matching = {
	readonly matches: readonly Match[];
	readonly removed: readonly Unmatched[];
	readonly added: readonly Unmatched[];
};

/** Two speakers or seats whose distance to the same thing agrees this well may be one that was renamed, metres. */
const sameDistanceMetres = 0.15;

function thingsOf(profile: Profile, kind: ThingKind): Thing[] {
	switch (kind) {
		case 'seat':
			return profile.seats.map(({id, name, reference}) => ({
				id,
				name,
				data: {reference: reference === true},
			}));
		case 'sub':
			return (profile.subs ?? []).map(({id, name, ...data}) => ({id, name, data}));
		case 'output':
			return (profile.bassProcessor?.outputs ?? []).map(id => ({id, name: id, data: {}}));
		case 'channel':
			return profile.channels.map(({id, speaker}) => ({id, name: channelNames[id], data: speaker}));
	}
}

/** Left, right or middle, and high or low: what a channel keeps when a layout gives it another name. */
function stance(id: string): string {
	const height = isOverhead(id)
		? 'top'
		: id.startsWith('Bt')
			? 'bottom'
			: id.startsWith('LFE')
				? 'lfe'
				: 'ear';
	const base = id.replace(/^(Tp|Bt)/, '').replace(/[cwd]$/, '');
	const side = /^L|L$/.test(base) ? 'left' : /^R|R$/.test(base) ? 'right' : 'middle';
	return `${height} ${side}`;
}

/** How many tape distances to things of known name agree, less those that do not. */
function agreement(
	older: Profile,
	newer: Profile,
	rename: ReadonlyMap<string, string>,
	a: string,
	b: string,
): number {
	const olderMeans = tapeMeans(older, end => (end === a ? b : (rename.get(end) ?? end)));
	const newerMeans = tapeMeans(newer);
	const others = new Set((newer.tape ?? []).flatMap(({from, to}) => [from, to]));
	let score = 0;
	for (const other of others) {
		const before = olderMeans.get(pairKey(b, other));
		const after = newerMeans.get(pairKey(b, other));
		if (before && after) score += Math.abs(after.value - before.value) <= sameDistanceMetres ? 1 : -1;
	}

	return score;
}

function matchKind(older: Profile, newer: Profile, kind: ThingKind, rename: Map<string, string>): Matching {
	let olderLeft = thingsOf(older, kind);
	let newerLeft = thingsOf(newer, kind);
	const matches: Match[] = [];
	const take = (before: Thing, after: Thing, by: Match['by']) => {
		matches.push({kind, older: before.id, newer: after.id, name: after.name, olderName: before.name, by});
		rename.set(before.id, after.id);
		olderLeft = olderLeft.filter(thing => thing !== before);
		newerLeft = newerLeft.filter(thing => thing !== after);
	};

	const pairs = (fits: (before: Thing, after: Thing) => boolean, by: Match['by']) => {
		for (const before of [...olderLeft]) {
			const fitting = newerLeft.filter(after => fits(before, after));
			const rivals = olderLeft.filter(rival => fitting.some(after => fits(rival, after)));
			if (fitting.length === 1 && rivals.length === 1) take(before, fitting[0]!, by);
		}
	};

	const sameName = (a: Thing, b: Thing) => a.name.trim().toLowerCase() === b.name.trim().toLowerCase();
	pairs((a, b) => a.id === b.id && sameName(a, b), 'id');
	// Ids are handed out in order of entry and so may be swapped where the names are not.
	if (kind === 'sub' || kind === 'seat') pairs(sameName, 'name');
	pairs((a, b) => a.id === b.id, 'id');

	const candidates = olderLeft.flatMap(before =>
		newerLeft
			.filter(after => kind !== 'channel' || stance(before.id) === stance(after.id))
			.map(after => ({
				before,
				after,
				score:
					agreement(older, newer, rename, before.id, after.id) +
					(before.data !== undefined && isSameValue(before.data, after.data) ? 0.5 : 0),
			})),
	);
	for (const {before, after, score} of candidates.sort((a, b) => b.score - a.score)) {
		if (score >= 1 && olderLeft.includes(before) && newerLeft.includes(after)) take(before, after, 'place');
	}

	// The only seat or sub left on both sides; a channel only where its side and height are the same.
	pairs((a, b) => kind !== 'channel' || stance(a.id) === stance(b.id), 'elimination');
	const rest = (things: readonly Thing[]) => things.map(({id, name}) => ({kind, id, name}));
	return {matches, removed: rest(olderLeft), added: rest(newerLeft)};
}

/**
Which channel, sub, seat and processor output of one profile is which of the other, renamed ones included.

Same id and name go first, then equal names of subs and seats, then equal ids, then what lies at the same tape
distances, then what alone is left. Whatever is left unmatched was removed or added.
*/
export function matchProfiles(older: Profile, newer: Profile): Matching {
	const rename = new Map<string, string>();
	const kinds: readonly ThingKind[] = ['seat', 'channel', 'sub', 'output'];
	const found = kinds.map(kind => matchKind(older, newer, kind, rename));
	return {
		matches: found.flatMap(({matches}) => matches),
		removed: found.flatMap(({removed}) => removed),
		added: found.flatMap(({added}) => added),
	};
}
