import {channelNames} from './channels.ts';
import type {Profile} from './types.ts';

/** What the tape can be held against and the meter can hear, besides what a profile names itself. */
const fixedNames: ReadonlyMap<string, string> = new Map([
	...Object.entries(channelNames),
	['wall:left', 'left wall'],
	['wall:right', 'right wall'],
	['wall:front', 'front wall'],
	['wall:back', 'back wall'],
	// The two walls of a corner that the room lacks: one faces left or right, the other the screen or the back.
	['wall:inner-x', 'wall beside the missing corner'],
	['wall:inner-y', 'wall before the missing corner'],
	['floor', 'floor'],
	['ceiling', 'ceiling'],
	['screen', 'centre of the screen'],
	['background', 'background'],
]);

/** `A`, `A and B`, `A, B and C`. */
export function listed(names: readonly string[]): string {
	return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/**
How tables, sentences and questions call a channel, sub, seat, plane, the screen, or several joined by `+`: by the plain
name, without an article; by the id where it has none.
*/
export function nameOf(profile: Pick<Profile, 'subs' | 'seats'>, id: string): string {
	if (id.includes('+')) return listed(id.split('+').map(part => nameOf(profile, part)));
	const own = profile.subs?.find(sub => sub.id === id) ?? profile.seats.find(seat => seat.id === id);
	return own?.name ?? fixedNames.get(id) ?? id;
}
