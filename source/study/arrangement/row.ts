import type {Vector} from '../survey/vectors.ts';
import type {Comparison} from './judged.ts';
import {movesOf, movesTo, type ThingMove} from './moves.ts';
import type {FoundArrangement} from './search.ts';
import type {SearchSpace} from './searchSpace.ts';
import {nearestSpot} from './spots.ts';
import type {Variant} from './variants.ts';

/** What a row of an answer is about. */
export type RowName =
	| {readonly kind: 'now'}
	| {readonly kind: 'asked'; readonly words: string}
	| {readonly kind: 'rung'; readonly lifted: number; readonly rowShiftMetres: number}
	/** One more sub, at this place. */
	| {readonly kind: 'oneMore'; readonly at: Vector}
	/** The screen on another wall, everything turned with it. */
	| {readonly kind: 'wall'; readonly wall: 'wall:left' | 'wall:right' | 'wall:back'};

/** One arrangement of an answer, with what it adds. */
export type ArrangementRow = {
	readonly name: RowName;
	readonly arrangement: FoundArrangement;
	/** Where its subs and ears stand; of another wall in the room as that wall sees it. */
	readonly places: Variant;
	/** Against the room as it stands. */
	readonly against?: Comparison;
	/** Of a rung against the rung above it in the list, draw by draw, where there is one. */
	readonly againstAbove?: Comparison;
};

/** What has to be lifted for a row; nothing for one that is only looked at. */
export function rowMoves(
	space: Pick<SearchSpace, 'seats' | 'subs'>,
	{name, arrangement, places}: Pick<ArrangementRow, 'name' | 'arrangement' | 'places'>,
): ThingMove[] {
	if (name.kind === 'now' || name.kind === 'oneMore' || name.kind === 'wall') return [];
	return name.kind === 'rung' ? movesOf(space, arrangement) : movesTo(space, places);
}

/** What a row is about: what moves, and the named spot nearest to where each move ends, or where one more sub would stand. */
export type RowContents = {
	readonly name: RowName;
	readonly moves: readonly ThingMove[];
	readonly spots: readonly string[];
};

export function rowContents(
	space: Pick<SearchSpace, 'seats' | 'subs' | 'room'>,
	row: Pick<ArrangementRow, 'name' | 'arrangement' | 'places'>,
): RowContents {
	const {name} = row;
	const moves = rowMoves(space, row);
	const ends = name.kind === 'oneMore' ? [name.at] : moves.map(({to}) => to);
	return {name, moves, spots: ends.map(at => nearestSpot(at, space.room.shape))};
}
