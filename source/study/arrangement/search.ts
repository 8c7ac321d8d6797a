import {bassFrequenciesHertz} from '../room/bass.ts';
import {isInside} from '../room/shape.ts';
import type {Vector} from '../survey/vectors.ts';
import {drawCount, drawnModes, keepingShapes, type RoomDraw, roomDraws} from './draws.ts';
import type {BassField, Numbered, SubSetting} from './field.ts';
import {fieldOf} from './field.ts';
import {earsAt, firstLook, type Sketch} from './firstLook.ts';
import type {JudgedBass} from './judged.ts';
import type {SearchSpace} from './searchSpace.ts';
import {bestSubSettings, plainSpreadDb} from './subSettings.ts';

/** One arrangement that was judged. */
export type FoundArrangement = {
	/** Where each sub of the space stands, in its order. */
	readonly subs: readonly Vector[];
	readonly rowShiftMetres: number;
	/** What was lifted: subs that moved, plus one for the seats. */
	readonly lifted: number;
	readonly settings: readonly SubSetting[];
	readonly judged: JudgedBass;
	/** Level of all subs together by seat and frequency, dB, mean of the draws; where it was judged for its curve. */
	readonly seatsDb?: ReadonlyArray<readonly number[]>;
};

export type SearchStep = {
	readonly done: number;
	readonly of: number;
	readonly best: readonly FoundArrangement[];
};

/** How many sketches of each number of lifted things are judged in all draws. */
const judgedInFull = 8;
/** How many of these are given the best settings of their subs before one is chosen. */
const givenSettings = 3;

/** Everything that can be a source, numbered: the subs as they stand, then the places. */
function sourcesIn({subs, places}: SearchSpace): Numbered[] {
	return [...subs.map(({at}) => at), ...places.map(({at}) => at)].map((at, number) => ({at, number}));
}

/**
Searches the places of subs and seats. A first look sums every choice in a few draws; the best of each number of lifted
things are then judged in all draws with their best settings.

A generator: it yields how far it is and the best so far; who stops asking stops it.

@returns For each number of lifted things, from nothing up, the best arrangement found, in that order.
*/
export function* searchArrangements(space: SearchSpace): Generator<SearchStep, readonly FoundArrangement[]> {
	const {room, seats, subs, rowShiftsMetres} = space;
	const sources = sourcesIn(space);
	const rows = rowShiftsMetres.filter(shift =>
		seats.every(({at: [x, y, z]}) => isInside(room.shape, [x, y + shift, z])),
	);
	const modes = drawnModes(room);
	const look = firstLook(space, {modes, sources, rows, most: judgedInFull});
	let looked = look.next();
	let [done, of] = [0, 1];
	for (; !looked.done; looked = look.next()) {
		({done, of} = looked.value);
		yield {done, of, best: []};
	}

	const sketches = looked.value;
	const draws = roomDraws(room, bassFrequenciesHertz, drawCount, modes);
	const fieldsOf = fieldsIn(space, draws, sources, rows);
	const found: FoundArrangement[] = [];
	const most = Math.min(3, subs.filter(({isFixed}) => !isFixed).length + 1);
	for (let lifted = 0; lifted <= most; lifted++) {
		const plain: Array<{
			readonly sketch: Sketch;
			readonly fields: readonly BassField[];
			readonly meanDb: number;
		}> = [];
		for (const sketch of sketches.get(lifted) ?? []) {
			const fields = fieldsOf(sketch);
			plain.push({sketch, fields, meanDb: plainSpreadDb(fields)});
			yield {done, of, best: found};
		}

		let winner: FoundArrangement | undefined;
		for (const {sketch, fields} of plain.sort((a, b) => a.meanDb - b.meanDb).slice(0, givenSettings)) {
			const one: FoundArrangement = {
				subs: sketch.picked.map(source => sources[source]!.at),
				rowShiftMetres: rows[sketch.row]!,
				lifted,
				...bestSubSettings(fields, space.steps),
			};
			if (!winner || one.judged.meanDb < winner.judged.meanDb) winner = one;
			yield {done, of, best: [...found, winner]};
		}

		if (winner) found.push(winner);
	}

	return found;
}

/** Shapes that a draw keeps during a search: every place, and the ears of every row. */
const mostShapes = 1000;

/** Fields of sketches in all draws; what one source is at one row is computed once. */
function fieldsIn(
	{room, seats}: Pick<SearchSpace, 'room' | 'seats'>,
	draws: readonly RoomDraw[],
	sources: readonly Numbered[],
	rows: readonly number[],
): (sketch: Pick<Sketch, 'picked' | 'row'>) => BassField[] {
	const keeping = draws.map(draw => keepingShapes(draw, mostShapes));
	const known = new Map<string, BassField[]>();
	const fieldsOfOne = (source: number, row: number): BassField[] => {
		const key = `${source} ${row}`;
		const found = known.get(key);
		if (found) return found;
		const ears = earsAt(seats, rows[row]!);
		const fields = keeping.map(draw =>
			fieldOf(draw, [sources[source]!], ears, ears[0]!.at, room.speedOfSound),
		);
		known.set(key, fields);
		return fields;
	};
	return ({picked, row}) => {
		const parts = picked.map(source => fieldsOfOne(source, row));
		return draws.map((_, d) => joined(parts.map(part => part[d]!)));
	};
}

/** Fields of single sources at the same receivers as one. */
function joined(parts: readonly BassField[]): BassField {
	const [first] = parts;
	const size = first!.real.length;
	const real = new Float64Array(size * parts.length);
	const imaginary = new Float64Array(size * parts.length);
	for (const [i, part] of parts.entries()) {
		real.set(part.real, i * size);
		imaginary.set(part.imaginary, i * size);
	}

	return {...first!, sources: parts.length, real, imaginary};
}
