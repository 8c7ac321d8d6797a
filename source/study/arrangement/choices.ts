import type {SearchSpace} from './searchSpace.ts';

/**
Every set of places for the subs: each either stays where it is or goes to a place, none to the same one. Above two subs
that move the number grows too large: then pairs of them move, the others stay.

@returns For each sub the number of its source: subs as they stand first, then places.
*/
export function choices({subs, places}: Pick<SearchSpace, 'subs' | 'places'>): number[][] {
	const stay = subs.map((_, i) => i);
	const found = [stay];
	const free = subs.flatMap(({isFixed}, i) => (isFixed ? [] : [i]));
	for (const i of free)
		for (let p = 0; p < places.length; p++)
			found.push(stay.map((one, s) => (s === i ? subs.length + p : one)));
	for (const [a, i] of free.entries()) {
		for (const j of free.slice(a + 1)) {
			for (let p = 0; p < places.length; p++) {
				// Subs that are alike may be exchanged: which of them goes where is decided by the way it is carried.
				for (let q = p + 1; q < places.length; q++)
					found.push(stay.map((one, s) => (s === i ? subs.length + p : s === j ? subs.length + q : one)));
			}
		}
	}

	return found;
}
