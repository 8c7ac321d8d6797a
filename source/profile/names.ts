import {channelNames} from './channels.ts';
import type {Profile} from './types.ts';

/** What the tape can be held against and the meter can hear, besides what a profile names itself. */
const fixedNames: ReadonlyMap<string, string> = new Map([
	...Object.entries(channelNames),
	['wall:left', 'left wall'],
	['wall:right', 'right wall'],
	['wall:front', 'screen wall'],
	['wall:back', 'back wall'],
	// The two walls of a corner that the room lacks: one faces left or right, the other the screen or the back.
	['wall:inner-x', 'wall beside the missing corner'],
	['wall:inner-y', 'wall before the missing corner'],
	['floor', 'floor'],
	['ceiling', 'ceiling'],
	['screen', 'centre of the screen'],
	['background', 'background'],
	['subs', 'Subs together'],
	['receiver', 'receiver'],
	['processor', 'bass processor'],
]);

const fixed = new Set(fixedNames.values());

/**
Names before a colon, as a line begins: the program's own begin large, a name or label that somebody gave stays as it
was written.
*/
export function subjectText(names: readonly string[]): string {
	const text = listed(names);
	return fixed.has(names[0]!) ? text.replace(/^./u, first => first.toUpperCase()) : text;
}

/** The parts of a profile that give names. */
export type Named = Pick<Profile, 'subs' | 'seats' | 'wiring'>;

/** `A`, `A and B`, `A, B and C`. */
export function listed(names: readonly string[]): string {
	return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/**
How tables, sentences and questions call a channel, sub, seat, plane, outlet, the screen, a cable's end (`box/terminal`), or
several joined by `+`: by the plain name, without an article; by the id where it has none.
*/
export function nameOf(profile: Named, id: string): string {
	if (id.includes('+')) return listed(id.split('+').map(part => nameOf(profile, part)));
	const isIt = (thing: {readonly id: string}) => thing.id === id;
	const own = profile.subs?.find(isIt) ?? profile.seats.find(isIt) ?? profile.wiring?.outlets?.find(isIt);
	const name = own?.name ?? fixedNames.get(id);
	if (name !== undefined) return name;
	const slash = id.indexOf('/');
	return slash > 0 ? `${nameOf(profile, id.slice(0, slash))}, ${nameOf(profile, id.slice(slash + 1))}` : id;
}
