import {nameOf} from '../../../profile/names.ts';
import type {Connection, Profile} from '../../../profile/types.ts';
import {cablesOf} from '../../../study/wiring/cables.ts';
import {readEnd} from '../../../study/wiring/ends.ts';
import type {Cable, Positions} from '../../../study/wiring/result.ts';

const nowhere: Positions = new Map();

/** Every cable that the walk asks about, each id once. Lengths are those entered: no estimate, which costs time at every key. */
export function askedCables(profile: Profile): Cable[] {
	const seen = new Set<string>();
	return cablesOf(profile, nowhere).filter(({id}) => !seen.has(id) && seen.add(id));
}

/** What a cable leads to, by its plain name. */
export function farName(profile: Profile, {from, to}: Pick<Cable, 'from' | 'to'>): string {
	const sources = ['receiver', 'processor'];
	const box = [to, from].map(end => readEnd(end).box).find(name => !sources.includes(name));
	if (box === undefined) return 'Bass processor';
	const outlet = profile.wiring?.outlets?.find(({id}) => id === box)?.name;
	return outlet ?? nameOf(profile, box);
}

/** Longest id that a profile takes. */
const longestId = 60;

/**
The profile with a change of one cable. With the first answer all cables that the arrangement needs are entered: a list
that held one of them alone would call the others missing.
*/
export function withCable(profile: Profile, id: string, change: Partial<Connection>): Profile {
	const entered = profile.wiring?.connections ?? [];
	const ids = new Set(entered.map(cable => cable.id));
	const connections: Connection[] = [...entered];
	let changedId = id;
	for (const cable of cablesOf(profile, nowhere).filter(({origin}) => origin === 'proposed')) {
		const ownId = freeId(cable.id, ids);
		ids.add(ownId);
		if (cable.id === id && !entered.some(other => other.id === id)) changedId = ownId;
		connections.push({id: ownId, from: cable.from, to: cable.to, kind: cable.kind});
	}

	return {
		...profile,
		wiring: {
			...profile.wiring,
			connections: connections.map(cable => (cable.id === changedId ? {...cable, ...change} : cable)),
		},
	};
}

/** The id, shortened to what a profile takes and numbered where it is taken. */
export function freeId(wanted: string, taken: ReadonlySet<string>): string {
	for (let number = 1; ; number++) {
		const suffix = number === 1 ? '' : `-${number}`;
		const id = wanted.slice(0, longestId - suffix.length) + suffix;
		if (!taken.has(id)) return id;
	}
}
