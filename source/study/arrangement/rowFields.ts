import type {Placed} from '../room/roomStudy.ts';
import type {RoomDraw} from './draws.ts';
import {type BassField, earsIn, fieldAt, type Numbered, pickedOf} from './field.ts';
import {seatsMoved} from './seatsMoved.ts';

/** Sources that play together, and the row that the seats stand in, by their numbers. */
export type Playing = {readonly picked: readonly number[]; readonly row: number};

/** Ears of a row, moved towards the back. */
export const earsAt = (seats: readonly Placed[], shiftMetres: number): Numbered[] =>
	seatsMoved(seats, shiftMetres).map((at, i) => ({at, number: 10_000 + i}));

/**
Fields of sources at rows of seats in every draw, each source of each row once. A generator: it yields every few
milliseconds.

@param rows - How far each row is moved towards the back, metres.
@returns The fields of one of `wanted`, one a draw.
*/
export function* rowFields(
	{
		draws,
		sources,
		seats,
		rows,
		speedOfSound,
	}: {
		readonly draws: readonly RoomDraw[];
		readonly sources: readonly Numbered[];
		readonly seats: readonly Placed[];
		readonly rows: readonly number[];
		readonly speedOfSound: number;
	},
	wanted: readonly Playing[],
): Generator<void, (playing: Playing) => BassField[]> {
	const needed = new Map<number, Set<number>>();
	for (const {picked, row} of wanted) {
		const here = needed.get(row) ?? new Set();
		needed.set(row, here);
		for (const source of picked) here.add(source);
	}

	const found = new Map<number, {places: number[]; fields: BassField[]}>();
	for (const [row, here] of needed) {
		const places = [...here];
		const playing = places.map(source => sources[source]!);
		const ears = earsAt(seats, rows[row]!);
		const fields: BassField[] = [];
		for (const draw of draws) {
			fields.push(fieldAt(draw, playing, earsIn(draw, ears, speedOfSound)));
			yield;
		}

		found.set(row, {places, fields});
	}

	return ({picked, row}) => {
		const {places, fields} = found.get(row)!;
		const own = picked.map(source => places.indexOf(source));
		return fields.map(field => pickedOf(field, own));
	};
}
