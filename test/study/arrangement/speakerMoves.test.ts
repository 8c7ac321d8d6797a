import {expect, test} from 'vitest';
import {speakerAngles, speakerMoves} from '../../../source/study/arrangement/speakerMoves.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';

const shape = {kind: 'box', widthMetres: 4.4, lengthMetres: 6, heightMetres: 2.5} as const;
const channels = [{id: 'FL'}, {id: 'FR'}, {id: 'FC'}, {id: 'LS'}, {id: 'RS'}] as const;
/** A place at an azimuth from an ear at (2.2, 3.4), positive to the left, two metres off. */
const around = (degrees: number): Vector => [
	2.2 - 2 * Math.sin((degrees * Math.PI) / 180),
	3.4 - 2 * Math.cos((degrees * Math.PI) / 180),
	1.1,
];
const speakers = [
	{id: 'FC', at: [2.2, 0.3, 1.1] as Vector},
	{id: 'FL', at: around(30)},
	{id: 'FR', at: around(-30)},
	{id: 'LS', at: around(110)},
	{id: 'RS', at: around(-110)},
];
const planned = {
	places: speakers.map(({id, at: [xMetres, yMetres, zMetres]}) => ({id, xMetres, yMetres, zMetres})),
};
const room = {channels: [...channels], planned};
const ear: Vector = [2.2, 3.4, 1.1];

test('where all stand within their angles none is moved', () => {
	expect(speakerAngles(room, shape, speakers, ear).every(({outsideDegrees}) => outsideDegrees === 0)).toBe(
		true,
	);
	expect(speakerMoves(room, shape, speakers, ear)).toEqual([]);
});

// ITU-R BS.775: surrounds of a pair at 100 to 120 degrees, fronts at 30.
test('a seat that goes forward takes its speakers with it, into their angles and inside the walls', () => {
	const forward: Vector = [2.2, 2.6, 1.1];
	const moves = speakerMoves(room, shape, speakers, forward);
	expect(moves.map(({id}) => id)).toEqual(['FL', 'FR', 'LS', 'RS']);
	const after = speakers.map(({id, at}) => ({id, at: moves.find(move => move.id === id)?.to ?? at}));
	for (const {outsideDegrees} of speakerAngles(room, shape, after, forward)) expect(outsideDegrees).toBe(0);
	for (const {
		to: [x, y],
	} of moves)
		expect(x > 0.199 && x < 4.201 && y > 0.199 && y < 5.801).toBe(true);
	const [left, right] = moves;
	// A room that is the same on both sides stays so.
	expect(left!.to[0] + right!.to[0]).toBeCloseTo(4.4, 9);
});

test('what is fixed, and what has no place yet, is left alone', () => {
	const forward: Vector = [2.2, 2.6, 1.1];
	expect(speakerMoves({channels: [...channels]}, shape, speakers, forward)).toEqual([]);
	const fixed = {...room, channels: channels.map(one => ({...one, fixed: true}))};
	expect(speakerMoves(fixed, shape, speakers, forward)).toEqual([]);
});
