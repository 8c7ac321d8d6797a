import type {Profile} from '../../profile/types.ts';
import type {Vector} from '../survey/vectors.ts';
import {assumedPlaces} from './assumed.ts';
import type {LiveArrangement, PlanBench} from './planBench.ts';
import {type FoundArrangement, type SearchStep, searchArrangements} from './search.ts';
import type {ArrangementSpace} from './spaceOf.ts';
import {subPlaces} from './subPlaces.ts';
import {type OtherWall, turnedKeepOuts, turnedShape} from './turned.ts';

/** Places for one more sub are looked at one in so many: neighbours differ little. */
const everyPlace = 3;
/** Distance between neighbouring places for a look at another wall, metres. */
const roughMetres = 0.9;

/**
The best place for one more sub beside those that stand; undefined where no place is free. A generator: it yields which
share of the places was looked at.
*/
export function* oneMoreSub(
	space: ArrangementSpace,
	bench: PlanBench,
): Generator<number, LiveArrangement | undefined> {
	const seats = space.seats.map(({at}) => at);
	const standing = space.subs.map(({at}) => at);
	let best: LiveArrangement | undefined;
	for (const [i, {at}] of space.places.entries()) {
		if (i % everyPlace !== 0) continue;
		const work = bench.judging({subs: [...standing, at], seats, lifted: 1});
		let next = work.next();
		for (; !next.done; next = work.next()) yield i / space.places.length;
		const one = next.value;
		if (!best || one.judged.meanDb < best.judged.meanDb) best = one;
	}

	return best;
}

/** Where the seats usually are from another wall, in the room as that wall sees it. */
export const seatsFacing = (
	profile: Pick<Profile, 'seats' | 'channels' | 'subs' | 'room'>,
	{room}: Pick<ArrangementSpace, 'room'>,
	wall: OtherWall,
): Vector[] => assumedPlaces(profile, turnedShape(room.shape, wall), undefined).seats.map(({at}) => at);

/**
What the room could be with the screen on another wall: seats where they usually are from there, subs at their best
places, by a rough search.

@param profile - What there is to place, and what is marked.
*/
export function* otherWall(
	profile: Pick<Profile, 'seats' | 'channels' | 'subs' | 'room'>,
	space: ArrangementSpace,
	wall: OtherWall,
): Generator<SearchStep, FoundArrangement | undefined> {
	const shape = turnedShape(space.room.shape, wall);
	const {seats} = assumedPlaces(profile, shape, undefined);
	const places = subPlaces(
		shape,
		seats.map(({at}) => at),
		turnedKeepOuts(profile.room.features ?? [], space.room.shape, wall),
		roughMetres,
	);
	// Every sub is lifted anyway: each begins where it would usually stand there.
	const subs = space.subs.map(({id}, i) => ({
		id,
		at: places[i % Math.max(1, places.length)]?.at,
		isFixed: false,
	}));
	const placed = subs.flatMap(({id, at}) => (at ? [{id, at, isFixed: false}] : []));
	if (placed.length === 0) return undefined;
	const found = yield* searchArrangements({
		room: {...space.room, shape},
		seats,
		subs: placed,
		places,
		rowShiftsMetres: [0],
		steps: undefined,
	});
	return found.reduce<FoundArrangement | undefined>(
		(best, one) => (best && best.judged.meanDb <= one.judged.meanDb ? best : one),
		undefined,
	);
}
