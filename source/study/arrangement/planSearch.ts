import type {Profile} from '../../profile/types.ts';
import {compareBass} from './judged.ts';
import {ladderRows} from './ladder.ts';
import type {PlanBench} from './planBench.ts';
import type {ArrangementRow} from './row.ts';
import {type FoundArrangement, searchArrangements} from './search.ts';
import {seatsMoved} from './seatsMoved.ts';
import type {ArrangementSpace} from './spaceOf.ts';
import {oneMoreSub, otherWall, seatsFacing} from './worthIt.ts';

/** How far a search for the ladder is, and the rows that it has so far. */
export type PlanSearchStep = {
	readonly what: 'places' | 'oneMore' | 'walls';
	readonly done: number;
	readonly of: number;
	readonly rows: readonly ArrangementRow[];
};

const otherWalls = ['wall:left', 'wall:right', 'wall:back'] as const;
/** More subs than this nobody adds to. */
const mostSubs = 4;

/**
Everything that a room could be made into, by what has to be lifted: settings alone, one thing, two, the seats too; then
one more sub, and the screen on another wall. A generator: who stops asking keeps the rows so far.

@param now - The room as it stands, without settings: what every row is held against.
*/
export function* searchPlan(
	profile: Pick<Profile, 'seats' | 'channels' | 'subs' | 'room'>,
	space: ArrangementSpace,
	bench: PlanBench,
	now: FoundArrangement,
): Generator<PlanSearchStep, readonly ArrangementRow[]> {
	const seats = space.seats.length;
	const against = (arrangement: FoundArrangement) => compareBass(now.judged, arrangement.judged, seats);
	// A search picks what did best in its draws, luck included: what it found is judged again, every sub with its own errors.
	const again = new Map<FoundArrangement, FoundArrangement>();
	function* rungs(found: readonly FoundArrangement[]): Generator<void, ArrangementRow[]> {
		for (const one of found)
			if (!again.has(one)) {
				const places = {subs: one.subs, seats: seatsMoved(space.seats, one.rowShiftMetres)};
				again.set(one, yield* bench.judging({...one, ...places}));
			}

		return ladderRows(
			space,
			now,
			found.map(one => again.get(one)!),
		);
	}

	const search = searchArrangements(space);
	let rows: ArrangementRow[] = [];
	let step = search.next();
	for (; !step.done; step = search.next()) {
		const {done, of, best} = step.value;
		const told = (): PlanSearchStep => ({what: 'places', done, of, rows});
		if (best.some(one => !again.has(one))) rows = yield* between(rungs(best), told);
		yield told();
	}

	rows = yield* between(rungs(step.value), (): PlanSearchStep => ({what: 'places', done: 1, of: 1, rows}));
	if (space.subs.length < mostSubs) {
		const more = oneMoreSub(space, bench);
		let next = more.next();
		for (; !next.done; next = more.next()) yield {what: 'oneMore', done: next.value, of: 1, rows};
		const arrangement = next.value;
		if (arrangement)
			rows = [
				...rows,
				{
					name: {kind: 'oneMore', at: arrangement.subs.at(-1)!},
					arrangement,
					places: {subs: arrangement.subs, seats: space.seats.map(({at}) => at)},
					against: against(arrangement),
				},
			];
	}

	let best: ArrangementRow | undefined;
	for (const [i, wall] of otherWalls.entries()) {
		const look = otherWall(profile, space, wall);
		let next = look.next();
		for (; !next.done; next = look.next()) yield {what: 'walls', done: i, of: otherWalls.length, rows};
		const arrangement = next.value;
		if (arrangement && (!best || arrangement.judged.meanDb < best.arrangement.judged.meanDb))
			best = {
				name: {kind: 'wall', wall},
				arrangement,
				places: {subs: arrangement.subs, seats: seatsFacing(profile, space, wall)},
				against: against(arrangement),
			};
	}

	return best ? [...rows, best] : rows;
}

/** Runs work that tells nothing itself; between its steps `told` is yielded. */
function* between<Result>(
	work: Generator<unknown, Result>,
	told: () => PlanSearchStep,
): Generator<PlanSearchStep, Result> {
	for (;;) {
		const next = work.next();
		if (next.done) return next.value;
		yield told();
	}
}
