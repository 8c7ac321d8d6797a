import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {distanceFinder, tapeDistanceM} from '../../../../source/study/calibration/headroom/distances.ts';
import {adjustNetwork} from '../../../../source/study/survey/adjust.ts';

const tape = [
	{from: 'FL', to: 'sofa', metres: 3},
	{from: 'sofa', to: 'FL', metres: 3.02},
	{from: 'FL', to: 'sofa', metres: 9, setAside: true},
	{from: 'FR', to: 'sofa', metres: 0},
];

test('tapeDistanceM is undefined without a reading of more than nothing', () => {
	expect(tapeDistanceM({tape} as unknown as Profile, 'FR', 'sofa')).toBeUndefined();
	expect(tapeDistanceM({} as Profile, 'FL', 'sofa')).toBeUndefined();
});

test('tapeDistanceM is the mean of readings in both directions, without those put aside', () => {
	expect(tapeDistanceM({tape} as unknown as Profile, 'FL', 'sofa')).toBeCloseTo(3.01, 12);
});

/** A box of 5 × 4 × 2.5 m, invented: the seat at (2.5, 3, 1), the speaker at (1, 0.5, 1); tape to the walls alone. */
const walled = {
	format: 1,
	name: 'Invented room',
	date: '2026-04-18',
	room: {name: 'Invented room', widthMetres: 5, lengthMetres: 4, ceiling: {kind: 'flat', heightMetres: 2.5}},
	seats: [{id: 'sofa', name: 'Sofa', reference: true}],
	channels: [{id: 'FL'}, {id: 'FR'}],
	tape: [
		{from: 'sofa', to: 'wall:left', metres: 2.5},
		{from: 'sofa', to: 'wall:front', metres: 3},
		{from: 'sofa', to: 'floor', metres: 1},
		{from: 'FL', to: 'wall:left', metres: 1},
		{from: 'FL', to: 'wall:front', metres: 0.5},
		{from: 'FL', to: 'floor', metres: 1},
	],
} satisfies Profile;

// √(1.5² + 2.5²) = 2.9155 m.
test('distanceFinder takes a distance that was not read from the net of the others', () => {
	const distanceOf = distanceFinder(walled, adjustNetwork(walled));
	expect(distanceOf('FL', 'sofa')).toBeCloseTo(2.9155, 3);
	expect(distanceOf('FR', 'sofa')).toBeUndefined();
});

test('distanceFinder prefers the direct reading', () => {
	const read = {...walled, tape: [...walled.tape, {from: 'FL', to: 'sofa', metres: 2.9}]};
	expect(distanceFinder(read, undefined)('FL', 'sofa')).toBe(2.9);
});
