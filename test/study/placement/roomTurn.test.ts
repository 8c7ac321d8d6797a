import {expect, test} from 'vitest';
import {roomTurn} from '../../../source/study/placement/roomTurn.ts';
import type {RoomSize} from '../../../source/study/survey/roomSize.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';

const flat: RoomSize = {widthMetres: 4.2, lengthMetres: 5.6, ceiling: {heightMetres: 2.5}};
const sloped = (first: number, second: number, axis: 0 | 1 = 0): RoomSize => ({
	...flat,
	ceiling: {axis, heightsMetres: [first, second]},
});
/** Half a turn about the middle of the floor: (x, y) goes to (4.2 − x, 5.6 − y). */
const halfTurned = ([x, y, z]: Vector): Vector => [4.2 - x, 5.6 - y, z];
const sub: Vector = [0.4, 0.4, 0.3];
const chair: Vector = [1.5, 3.9, 1.1];

test('roomTurn finds nothing where nothing is known or nothing differs', () => {
	expect(roomTurn({}, {}, [])).toBeUndefined();
	expect(roomTurn(flat, flat, [])).toBeUndefined();
	expect(roomTurn(flat, flat, [[sub, sub]])).toBeUndefined();
});

test.each([0, 1] as const)(
	'roomTurn sees half a turn where the ends of a slope along axis %i change places',
	axis => {
		expect(roomTurn(sloped(2.6, 1.9, axis), sloped(1.92, 2.58, axis), [])).toEqual({
			turn: 'half',
			by: 'ceiling',
		});
	},
);

test('roomTurn takes a ceiling that hardly slopes, or slopes as before, for no evidence', () => {
	expect(roomTurn(sloped(2.6, 2.5), sloped(2.5, 2.6), [])).toBeUndefined();
	expect(roomTurn(sloped(2.6, 1.9), sloped(2.58, 1.91), [])).toBeUndefined();
});

test('roomTurn sees a quarter turn where width and length change places, but not in a square room', () => {
	expect(roomTurn(flat, {widthMetres: 5.58, lengthMetres: 4.21}, [])).toEqual({turn: 'quarter', by: 'walls'});
	const square = {widthMetres: 4.2, lengthMetres: 4.3};
	expect(roomTurn(square, {widthMetres: 4.3, lengthMetres: 4.2}, [])).toBeUndefined();
});

test('roomTurn sees half a turn where two things that stayed say so, and not from one', () => {
	const both = [sub, chair].map(at => [at, halfTurned(at)] as const);
	expect(roomTurn(flat, flat, both)).toEqual({turn: 'half', by: 'things'});
	expect(roomTurn(flat, flat, both.slice(0, 1))).toBeUndefined();
});

test('roomTurn does not take two subs that changed corners for a turn of the room', () => {
	const stayed = [chair, [2.1, 3.9, 1.1], [2.1, 0.1, 1.2]] as Vector[];
	const places = [
		[sub, halfTurned(sub)] as const,
		[halfTurned(sub), sub] as const,
		...stayed.map(at => [at, at] as const),
	];
	expect(roomTurn(flat, flat, places)).toBeUndefined();
});
