import {octaveFractionGrid} from '../room/frequencies.ts';
import type {RoomModes} from '../room/modes.ts';
import type {Placed} from '../room/roomStudy.ts';
import {keepingShapes, modesUpTo, roomDraws} from './draws.ts';
import {addSource, type BassField, emptySums, fieldOf, type Numbered, quickBass, shapesAt} from './field.ts';
import type {SearchSpace} from './searchSpace.ts';
import {seatsMoved} from './seatsMoved.ts';

/** One arrangement as the first look sees it: which source each sub is, which row the seats, and how uneven it is. */
export type Sketch = {
	readonly picked: readonly number[];
	readonly row: number;
	readonly lifted: number;
	readonly quickDb: number;
};

/** Fewer draws and wider steps of frequency than in full. */
const look = {draws: 4, perOctave: 6, summedToHertz: 200} as const;
/** Rows looked at first, where there are many: one in so many; those between only for what did well. */
const rowStride = 3;
/** How many sketches of each number of lifted things are looked at in the rows between. */
const refined = 16;
/** Work between two answers, in sums of one arrangement: some milliseconds. */
const chunk = 400;

/** Ears of a row, moved towards the back. */
export const earsAt = (seats: readonly Placed[], shiftMetres: number): Numbered[] =>
	seatsMoved(seats, shiftMetres).map((at, i) => ({at, number: 10_000 + i}));

/**
Every set of places for the subs: each either stays where it is or goes to a place, none to the same one. Above two subs
that move the number grows too large: then pairs of them move, the others stay.
*/
function choices({subs, places}: SearchSpace): number[][] {
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
	const frequenciesHertz = octaveFractionGrid(20, 120, look.perOctave);
	const draws = roomDraws(room, frequenciesHertz, look.draws, modesUpTo(modes, look.summedToHertz)).map(
		draw => keepingShapes(draw, sources.length + seats.length * rows.length),
	);
	const shapes: Float64Array[][] = [];
	const all = choices(space);
	const still = rows.indexOf(0);
	const stride = rows.length > 2 * rowStride ? rowStride : 1;
	const coarse = rows.flatMap((_, i) => ((i - still) % stride === 0 ? [i] : []));
	const of = all.length * coarse.length;
	for (const draw of draws) {
		shapes.push(shapesAt(draw, sources));
		yield {done: 0, of};
	}

	const best = new Map<number, Sketch[]>();
	const keep = (sketch: Sketch) => {
		const list = best.get(sketch.lifted) ?? [];
		best.set(sketch.lifted, list);
		if (list.length >= refined && sketch.quickDb >= list.at(-1)!.quickDb) return;
		list.splice(list.findLastIndex(one => one.quickDb <= sketch.quickDb) + 1, 0, sketch);
		list.length = Math.min(list.length, refined);
	};
	let done = 0;
	for (const row of coarse) {
		const ears = earsAt(seats, rows[row]!);
		const fields: BassField[] = [];
		for (const [d, draw] of draws.entries()) {
			fields.push(fieldOf(draw, sources, ears, ears[0]!.at, room.speedOfSound, shapes[d]));
			yield {done, of};
		}

		const spread = spreadIn(fields);
		for (const picked of all) {
			const moved = picked.filter((source, i) => source !== i).length;
			keep({picked, row, lifted: moved + Number(row !== still), quickDb: spread(picked)});
			done++;
			if (done % chunk === 0) yield {done, of};
		}
	}

	for (const sketch of [...best.values()].flat()) {
		if (sketch.row === still) continue;
		const playing = sketch.picked.map(source => sources[source]!);
		for (let row = sketch.row - stride + 1; row < sketch.row + stride; row++) {
			if (row === sketch.row || row === still || rows[row] === undefined) continue;
			const ears = earsAt(seats, rows[row]!);
			const fields = draws.map((draw, d) =>
				fieldOf(
					draw,
					playing,
					ears,
					ears[0]!.at,
					room.speedOfSound,
					sketch.picked.map(source => shapes[d]![source]!),
				),
			);
			keep({...sketch, row, quickDb: spreadIn(fields)(playing.map((_, i) => i))});
		}

		yield {done, of};
	}

	return new Map([...best].map(([lifted, list]) => [lifted, list.slice(0, most)]));
}

/** The mean spread over some fields of a choice of sources. */
function spreadIn(fields: readonly BassField[]): (picked: readonly number[]) => number {
	const sums = emptySums(fields[0]!);
	return picked => {
		let spreadDb = 0;
		for (const field of fields) {
			sums.real.fill(0);
			sums.imaginary.fill(0);
			for (const source of picked) addSource(sums, field, source);
			spreadDb += quickBass(sums, field.receivers).spreadDb / fields.length;
		}

		return spreadDb;
	};
}
