import {distance, type Vector} from '../survey/vectors.ts';
import type {FoundArrangement} from './search.ts';
import type {SearchSpace} from './searchSpace.ts';

/** One thing to lift: from where to where, metres in the room's frame. */
export type ThingMove = {
	readonly id: string;
	readonly kind: 'sub' | 'seat' | 'speaker';
	readonly from: Vector;
	readonly to: Vector;
};

/** Nearer than this nothing is lifted, metres. */
const sameMetres = 0.02;
/** What was moved by hand counts from here, metres: a step is never smaller. */
const movedMetres = 0.005;

/**
What has to be lifted for an arrangement, in the order in which to do it: seats first, since everything is measured from
them. Subs that are alike go where the way is shorter.
*/
export function movesOf(
	{seats, subs}: Pick<SearchSpace, 'seats' | 'subs'>,
	{subs: targets, rowShiftMetres}: Pick<FoundArrangement, 'subs' | 'rowShiftMetres'>,
): ThingMove[] {
	const rows: ThingMove[] = seats.map(({id, at: [x, y, z]}) => ({
		id,
		kind: 'seat',
		from: [x, y, z],
		to: [x, y + rowShiftMetres, z],
	}));
	const carried = carry(subs, targets);
	return [...rows, ...carried].filter(({from, to}) => distance(from, to) > sameMetres);
}

/** What has to be lifted so that every thing stands at its place, in the order of the lists, seats first. */
export function movesTo(
	{seats, subs}: Pick<SearchSpace, 'seats' | 'subs'>,
	to: {readonly seats: readonly Vector[]; readonly subs: readonly Vector[]},
): ThingMove[] {
	const moved = (
		kind: ThingMove['kind'],
		things: ReadonlyArray<{readonly id: string; readonly at: Vector}>,
		places: readonly Vector[],
	): ThingMove[] =>
		things
			.map(({id, at}, i) => ({id, kind, from: at, to: places[i]!}))
			.filter(move => distance(move.from, move.to) > movedMetres);
	return [...moved('seat', seats, to.seats), ...moved('sub', subs, to.subs)];
}

function carry(subs: SearchSpace['subs'], targets: readonly Vector[]): ThingMove[] {
	const pairs = subs.map((sub, i): ThingMove => ({id: sub.id, kind: 'sub', from: sub.at, to: targets[i]!}));
	for (const [i, one] of pairs.entries()) {
		for (let j = i + 1; j < pairs.length; j++) {
			const other = pairs[j]!;
			if (subs[i]!.isFixed || subs[j]!.isFixed) continue;
			const straight = distance(pairs[i]!.from, pairs[i]!.to) + distance(other.from, other.to);
			const crossed = distance(pairs[i]!.from, other.to) + distance(other.from, pairs[i]!.to);
			if (crossed >= straight - sameMetres) continue;
			const to = pairs[i]!.to;
			pairs[i] = {...one, to: other.to};
			pairs[j] = {...other, to};
		}
	}

	return pairs;
}
