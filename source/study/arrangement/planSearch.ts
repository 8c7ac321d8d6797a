import type {Profile} from '../../profile/types.ts';
import type {ArrangementRow} from './answer.ts';
import {compareBass} from './judged.ts';
import type {PlanBench} from './planBench.ts';
import {type FoundArrangement, searchArrangements} from './search.ts';
import type {ArrangementSpace} from './spaceOf.ts';
import {oneMoreSub, otherWall} from './worthIt.ts';

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
	const rungs = (found: readonly FoundArrangement[]) =>
		found
			.filter(({lifted, settings}) => lifted > 0 || settings.some(isSet))
			.map(
				(arrangement): ArrangementRow => ({
					name: {
						kind: 'rung',
						lifted: arrangement.lifted,
						rowShiftMetres: arrangement.rowShiftMetres,
					},
					arrangement,
					against: against(arrangement),
				}),
			);
	const search = searchArrangements(space);
	let step = search.next();
	for (; !step.done; step = search.next()) {
		const {done, of, best} = step.value;
		yield {what: 'places', done, of, rows: rungs(best)};
	}

	const rows: ArrangementRow[] = rungs(step.value);
	if (space.subs.length < mostSubs) {
		const more = oneMoreSub(space, bench);
		let next = more.next();
		for (let done = 0; !next.done; next = more.next(), done++)
			yield {what: 'oneMore', done, of: Math.ceil(space.places.length / 3), rows};
		const arrangement = next.value;
		if (arrangement)
			rows.push({
				name: {kind: 'oneMore', at: arrangement.subs.at(-1)!},
				arrangement,
				against: against(arrangement),
			});
	}

	let best: ArrangementRow | undefined;
	for (const [i, wall] of otherWalls.entries()) {
		const look = otherWall(profile, space, wall);
		let next = look.next();
		for (; !next.done; next = look.next()) yield {what: 'walls', done: i, of: otherWalls.length, rows};
		const arrangement = next.value;
		if (arrangement && (!best || arrangement.judged.meanDb < best.arrangement.judged.meanDb))
			best = {name: {kind: 'wall', wall}, arrangement, against: against(arrangement)};
	}

	return best ? [...rows, best] : rows;
}

const isSet = ({delayMs, gainDb, isInverted}: FoundArrangement['settings'][number]) =>
	delayMs !== 0 || gainDb !== 0 || isInverted;
