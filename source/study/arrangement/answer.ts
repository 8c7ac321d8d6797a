import {finding} from '../../profile/finding.ts';
import type {Profile} from '../../profile/types.ts';
import {isInside} from '../room/shape.ts';
import {add, distance, type Vector} from '../survey/vectors.ts';
import type {ArrangementFinding} from './facts.ts';
import {type Comparison, compareBass} from './judged.ts';
import {ladderOf} from './ladder.ts';
import {movesOf, type ThingMove} from './moves.ts';
import type {FoundArrangement} from './search.ts';
import type {ArrangementSpace} from './spaceOf.ts';
import type {Spot} from './spots.ts';
import {judgeVariants, type Variant} from './variants.ts';

/** What a row of an answer is about. */
export type RowName =
	| {readonly kind: 'now'}
	| {readonly kind: 'asked'; readonly words: string}
	| {readonly kind: 'rung'; readonly lifted: number; readonly rowShiftMetres: number}
	/** One more sub, at this place. */
	| {readonly kind: 'oneMore'; readonly at: Vector}
	/** The screen on another wall, everything turned with it. */
	| {readonly kind: 'wall'; readonly wall: 'wall:left' | 'wall:right' | 'wall:back'};

/** One arrangement of an answer, with what it adds to the room as it stands. */
export type ArrangementRow = {
	readonly name: RowName;
	readonly arrangement: FoundArrangement;
	readonly against?: Comparison;
};

/** What was asked, judged: the rows, what to carry for the one that is chosen, and what is said of it. */
export type ArrangementAnswer = {
	readonly question: 'now' | 'whatIf' | 'spots' | 'search';
	readonly rows: readonly ArrangementRow[];
	/** The row that is chosen, where one is better. */
	readonly chosen?: number;
	/** Empty where nothing is chosen. */
	readonly moves: readonly ThingMove[];
	readonly findings: readonly ArrangementFinding[];
};

/** A thing and how far it is moved, metres; `seats` are all of them. */
type Shift = {readonly id: string; readonly by: Vector};

const standing = ({subs, seats}: ArrangementSpace): Variant & {readonly lifted: number} => ({
	subs: subs.map(({at}) => at),
	seats: seats.map(({at}) => at),
	lifted: 0,
});

function comparisonFinding(
	{gainDb, certainty}: Comparison,
	lifted: number,
	seats: number,
): ArrangementFinding[] {
	if (gainDb <= 0 || certainty === 'none') return [finding('note', 'arrange-nothing-better', [])];
	return certainty === 'sure'
		? [finding('advice', 'arrange-better', [], {lifted, gainDb, seats})]
		: [finding('note', 'arrange-unclear', [], {lifted, gainDb})];
}

/** The room as it stands. */
export function asItStands(space: ArrangementSpace): ArrangementAnswer {
	const [arrangement] = judgeVariants(space, [standing(space)]);
	return {question: 'now', rows: [{name: {kind: 'now'}, arrangement: arrangement!}], moves: [], findings: []};
}

/** Ids that a what-if may move. */
export function movableIds({subs, seats}: ArrangementSpace): string[] {
	return [...subs.map(({id}) => id), 'seats', ...seats.map(({id}) => id)];
}

/** What if these things stood elsewhere; the ids of what the room would not hold, where there are any. */
export function whatIf(
	space: ArrangementSpace,
	shifts: readonly Shift[],
	words: string,
): ArrangementAnswer | {readonly outside: readonly string[]} {
	const shifted = (id: string, at: Vector, alias?: string): Vector =>
		shifts.filter(one => one.id === id || one.id === alias).reduce((where, {by}) => add(where, by), at);
	const subs = space.subs.map(({id, at}) => shifted(id, at));
	const seats = space.seats.map(({id, at}) => shifted(id, at, 'seats'));
	const outside = [...space.subs, ...space.seats].flatMap(({id}, i) =>
		isInside(space.room.shape, [...subs, ...seats][i]!) ? [] : [id],
	);
	if (outside.length > 0) return {outside};
	const [before, after] = judgeVariants(space, [standing(space), {subs, seats, lifted: shifts.length}]);
	const against = compareBass(before!.judged, after!.judged, seats.length);
	const moved = (
		kind: ThingMove['kind'],
		things: ArrangementSpace['seats'],
		to: readonly Vector[],
	): ThingMove[] =>
		things
			.map(({id, at}, i) => ({id, kind, from: at, to: to[i]!}))
			.filter(move => distance(move.from, move.to) > 0);
	return {
		question: 'whatIf',
		rows: [
			{name: {kind: 'now'}, arrangement: before!},
			{name: {kind: 'asked', words}, arrangement: after!, against},
		],
		chosen: 1,
		moves: [...moved('seat', space.seats, seats), ...moved('sub', space.subs, subs)],
		findings: comparisonFinding(against, shifts.length, seats.length),
	};
}

/** Which of some spots for one sub, the best first. */
export function whichSpot(space: ArrangementSpace, id: string, spots: readonly Spot[]): ArrangementAnswer {
	const now = standing(space);
	const variants = spots.map(({at}) => ({
		...now,
		lifted: 1,
		subs: space.subs.map(sub => (sub.id === id ? at : sub.at)),
	}));
	const [before, ...judged] = judgeVariants(space, [now, ...variants]);
	const rows = judged
		.map((arrangement, i): ArrangementRow & {readonly against: Comparison; readonly at: Vector} => ({
			name: {kind: 'asked', words: spots[i]!.words},
			arrangement,
			against: compareBass(before!.judged, arrangement.judged, space.seats.length),
			at: spots[i]!.at,
		}))
		.sort((a, b) => a.arrangement.judged.meanDb - b.arrangement.judged.meanDb);
	const best = rows[0]!;
	const from = space.subs.find(sub => sub.id === id)!.at;
	const isBetter = best.against.gainDb > 0 && best.against.certainty !== 'none';
	return {
		question: 'spots',
		rows: [{name: {kind: 'now'}, arrangement: before!}, ...rows.map(({at: _, ...row}) => row)],
		...(isBetter && {chosen: 1}),
		moves: isBetter ? [{id, kind: 'sub', from, to: best.at}] : [],
		findings: comparisonFinding(best.against, 1, space.seats.length),
	};
}

/** The ladder of a search: the best by what has to be lifted, and what to carry for the advised rung. */
export function ladderAnswer(space: ArrangementSpace, found: readonly FoundArrangement[]): ArrangementAnswer {
	const {rungs, advised} = ladderOf(found, space.seats.length);
	const chosen = rungs[advised]!;
	return {
		question: 'search',
		rows: rungs.map(({arrangement, againstNow}, i) => ({
			name: {kind: 'rung', lifted: arrangement.lifted, rowShiftMetres: arrangement.rowShiftMetres},
			arrangement,
			...(i > 0 && {against: againstNow}),
		})),
		chosen: advised,
		moves: advised === 0 ? [] : movesOf(space, chosen.arrangement),
		findings:
			advised === 0
				? [finding('note', 'arrange-nothing-better', [])]
				: [
						finding('advice', 'arrange-better', [], {
							lifted: chosen.arrangement.lifted,
							gainDb: chosen.againstNow.gainDb,
							seats: space.seats.length,
						}),
					],
	};
}

/**
What is planned once the moves are chosen: what is carried, and what has no place by tape yet. What is named by neither
stays where it stands.
*/
export function plannedPlaces(
	{tape = []}: Pick<Profile, 'tape'>,
	{seats, subs}: Pick<ArrangementSpace, 'seats' | 'subs'>,
	moves: readonly ThingMove[],
): ReadonlyArray<{readonly id: string; readonly at: Vector}> {
	const targets = new Map(moves.map(({id, to}) => [id, to]));
	const isTaped = (id: string) =>
		tape.some(({from, to, setAside}) => !setAside && (from === id || to === id));
	return [...seats, ...subs]
		.filter(({id}) => targets.has(id) || !isTaped(id))
		.map(({id, at}) => ({id, at: targets.get(id) ?? at}));
}
