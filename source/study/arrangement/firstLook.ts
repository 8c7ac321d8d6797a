import {octaveFractionGrid} from '../room/frequencies.ts';
import type {RoomModes} from '../room/modes.ts';
import {choices} from './choices.ts';
import {keepingShapes, modesUpTo, roomDrawsInSteps} from './draws.ts';
import {addSource, type BassField, earsIn, emptySums, fieldAt, type Numbered} from './field.ts';
import {quickBass, spreadBelow} from './quickBass.ts';
import {earsAt, type Playing, rowFields} from './rowFields.ts';
import type {SearchSpace} from './searchSpace.ts';

/** One arrangement as the first look sees it: which source each sub is, which row the seats, and how uneven it is. */
export type Sketch = Playing & {
	readonly lifted: number;
	readonly quickDb: number;
};

/** Fewer draws and wider steps of frequency than in full. */
const look = {draws: 4, perOctave: 6, summedToHertz: 200} as const;
/** Rows looked at first, where there are many: one in so many; those between only for what did well. */
const rowStride = 3;
/** How many sketches of each number of lifted things are looked at in the rows between. */
const refined = 10;
/**
A choice whose mean over the draws so far is beyond the limit by this factor is given up: draws agree on what is bad. The
last is 1, so that what is kept is right.
*/
const patience = [1.35, 1.15, 1.05, 1] as const;
/** Work between two answers, in sums of one arrangement: some milliseconds. */
const chunk = 400;

/** The evenest sketches of each number of lifted things, in order. */
function shortList(most: number) {
	const lists = new Map<number, Sketch[]>();
	return {
		lists,
		/** What a further sketch must stay below to come in. */
		limit(lifted: number): number {
			const list = lists.get(lifted);
			return list && list.length >= most ? list.at(-1)!.quickDb : Number.POSITIVE_INFINITY;
		},
		keep(sketch: Sketch): void {
			const list = lists.get(sketch.lifted) ?? [];
			lists.set(sketch.lifted, list);
			list.splice(list.findLastIndex(one => one.quickDb <= sketch.quickDb) + 1, 0, sketch);
			list.length = Math.min(list.length, most);
		},
	};
}

/**
The first look of a search: sums every choice of places in a few draws, in one row of seats of three; what did well is
looked at in the rows between too.

@param rows - How far the seats may be moved, metres.
@returns Sketches, the evenest of each number of lifted things first, no more than `most` of each.
*/
export function* firstLook(
	space: SearchSpace,
	{
		modes,
		sources,
		rows,
		most,
	}: {
		readonly modes: RoomModes;
		readonly sources: readonly Numbered[];
		readonly rows: readonly number[];
		readonly most: number;
	},
): Generator<{readonly done: number; readonly of: number}, ReadonlyMap<number, readonly Sketch[]>> {
	const {room, seats} = space;
	const all = choices(space).map(picked => ({
		picked,
		moved: picked.filter((source, i) => source !== i).length,
	}));
	const still = rows.indexOf(0);
	const stride = rows.length > 2 * rowStride ? rowStride : 1;
	const coarse = rows.flatMap((_, i) => ((i - still) % stride === 0 ? [i] : []));
	const of = all.length * coarse.length;
	let done = 0;
	const frequenciesHertz = octaveFractionGrid(20, 120, look.perOctave);
	const drawing = roomDrawsInSteps(room, frequenciesHertz, modesUpTo(modes, look.summedToHertz), look.draws);
	let drawn = drawing.next();
	for (; !drawn.done; drawn = drawing.next()) yield {done, of};
	const draws = drawn.value.map(draw => keepingShapes(draw, sources.length + seats.length * rows.length));

	const best = shortList(refined);
	for (const row of coarse) {
		const fields: BassField[] = [];
		for (const draw of draws) {
			fields.push(fieldAt(draw, sources, earsIn(draw, earsAt(seats, rows[row]!), room.speedOfSound)));
			yield {done, of};
		}

		const spreadOf = spreadIn(fields);
		for (const {picked, moved} of all) {
			const lifted = moved + Number(row !== still);
			const quickDb = spreadOf(picked, best.limit(lifted));
			if (quickDb !== undefined) best.keep({picked, row, lifted, quickDb});
			done++;
			if (done % chunk === 0) yield {done, of};
		}
	}

	const between: Sketch[] = [];
	for (const sketch of [...best.lists.values()].flat()) {
		if (sketch.row === still) continue;
		for (let row = sketch.row - stride + 1; row < sketch.row + stride; row++)
			if (row !== sketch.row && row !== still && rows[row] !== undefined) between.push({...sketch, row});
	}

	const {speedOfSound} = room;
	const refining = rowFields({draws, sources, seats, rows, speedOfSound}, between);
	let refinedFields = refining.next();
	for (; !refinedFields.done; refinedFields = refining.next()) yield {done, of};
	for (const sketch of between) {
		const own = sketch.picked.map((_, i) => i);
		const quickDb = spreadIn(refinedFields.value(sketch))(own, best.limit(sketch.lifted));
		if (quickDb !== undefined) best.keep({...sketch, quickDb});
	}

	yield {done, of};
	return new Map([...best.lists].map(([lifted, list]) => [lifted, list.slice(0, most)]));
}

/**
The mean spread over some fields of a choice of sources; undefined once it is not to stay below a limit. Choices that differ
in their last source alone come one after the other: the sum of those before is kept.
*/
function spreadIn(
	fields: readonly BassField[],
): (picked: readonly number[], limitDb: number) => number | undefined {
	const {receivers} = fields[0]!;
	const before = fields.map(emptySums);
	let first: readonly number[] | undefined;
	return (picked, limitDb) => {
		const last = receivers > 1 ? picked.length - 1 : picked.length;
		if (!first || isOther(first, picked, last)) {
			first = picked;
			for (let d = 0; d < fields.length; d++) {
				before[d]!.real.fill(0);
				before[d]!.imaginary.fill(0);
				for (let i = 0; i < last; i++) addSource(before[d]!, fields[d]!, picked[i]!);
			}
		}

		let sumDb = 0;
		for (let d = 0; d < fields.length; d++) {
			const leftDb = limitDb * (d + 1) * (patience[d] ?? 1) - sumDb;
			const found =
				receivers > 1
					? spreadBelow(before[d]!, fields[d]!, picked[last]!, leftDb)
					: quickBass(before[d]!, receivers).spreadDb;
			if (found === undefined || found >= leftDb) return undefined;
			sumDb += found;
		}

		return sumDb / fields.length;
	};
}

function isOther(one: readonly number[], other: readonly number[], count: number): boolean {
	for (let i = 0; i < count; i++) if (one[i] !== other[i]) return true;
	return false;
}
