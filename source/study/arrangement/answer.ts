import {finding} from '../../profile/finding.ts';
import type {Profile} from '../../profile/types.ts';
import {isInside} from '../room/shape.ts';
import {add, type Vector} from '../survey/vectors.ts';
import type {ArrangementFinding} from './facts.ts';
import {type Comparison, compareBass} from './judged.ts';
import {advisedRow} from './ladder.ts';
import {movesTo, type ThingMove} from './moves.ts';
import {type ArrangementRow, rowMoves} from './row.ts';
import type {FoundArrangement} from './search.ts';
import type {ArrangementSpace} from './spaceOf.ts';
import type {Spot} from './spots.ts';
import {judgeVariants, type Variant} from './variants.ts';

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

const nowRow = (space: ArrangementSpace, arrangement: FoundArrangement): ArrangementRow => ({
	name: {kind: 'now'},
	arrangement,
	places: standing(space),
});

/** The room as it stands. */
export function asItStands(space: ArrangementSpace): ArrangementAnswer {
	const [arrangement] = judgeVariants(space, [standing(space)]);
	return {question: 'now', rows: [nowRow(space, arrangement!)], moves: [], findings: []};
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
	return {
		question: 'whatIf',
		rows: [
			nowRow(space, before!),
			{name: {kind: 'asked', words}, arrangement: after!, places: {subs, seats}, against},
		],
		chosen: 1,
		moves: movesTo(space, {subs, seats}),
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
			places: {subs: arrangement.subs, seats: now.seats},
			against: compareBass(before!.judged, arrangement.judged, space.seats.length),
			at: spots[i]!.at,
		}))
		.sort((a, b) => a.arrangement.judged.meanDb - b.arrangement.judged.meanDb);
	const best = rows[0]!;
	const from = space.subs.find(sub => sub.id === id)!.at;
	const isBetter = best.against.gainDb > 0 && best.against.certainty !== 'none';
	return {
		question: 'spots',
		rows: [nowRow(space, before!), ...rows.map(({at: _, ...row}) => row)],
		...(isBetter && {chosen: 1}),
		moves: isBetter ? [{id, kind: 'sub', from, to: best.at}] : [],
		findings: comparisonFinding(best.against, 1, space.seats.length),
	};
}

/**
The ladder of a search: the room as it stands, the best by what has to be lifted, what else was looked at; what to carry
for the advised rung.

@param now - Judged as `rows` were.
*/
export function ladderAnswer(
	space: ArrangementSpace,
	now: FoundArrangement,
	rows: readonly ArrangementRow[],
): ArrangementAnswer {
	const seats = space.seats.length;
	const advised = advisedRow(now, rows, seats);
	const chosen = advised === undefined ? undefined : rows[advised]!;
	return {
		question: 'search',
		rows: [nowRow(space, now), ...rows],
		chosen: advised === undefined ? 0 : 1 + advised,
		moves: chosen ? rowMoves(space, chosen) : [],
		findings: chosen
			? [
					finding('advice', 'arrange-better', [], {
						lifted: chosen.arrangement.lifted,
						gainDb: chosen.against!.gainDb,
						seats,
					}),
				]
			: [finding('note', 'arrange-nothing-better', [])],
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
	return [
		...[...seats, ...subs]
			.filter(({id}) => targets.has(id) || !isTaped(id))
			.map(({id, at}) => ({id, at: targets.get(id) ?? at})),
		...moves.filter(({kind}) => kind === 'speaker').map(({id, to}) => ({id, at: to})),
	];
}
