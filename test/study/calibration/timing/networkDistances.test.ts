import {describe, expect, test} from 'vitest';
import {tapeKey} from '../../../../source/profile/ask/readings.ts';
import type {Profile, TapeReading} from '../../../../source/profile/types.ts';
import {networkDistances} from '../../../../source/study/calibration/timing/networkDistances.ts';
import {adjustNetwork} from '../../../../source/study/survey/adjust.ts';
import {solve} from '../../../afresh.ts';
import {emptyRoom} from '../room.ts';

// A made-up room of 4 m by 5 m by 2.5 m: points in metres from the front left corner of the floor.
const places = {
	middle: [2, 3.5, 1.1],
	FL: [0.8, 0.6, 1.1],
	FR: [3.2, 0.6, 1.1],
} as const;

function wallReadings(end: keyof typeof places): TapeReading[] {
	const [x, y, z] = places[end];
	return [
		{from: end, to: 'wall:left', metres: x},
		{from: end, to: 'wall:right', metres: 4 - x},
		{from: end, to: 'wall:front', metres: y},
		{from: end, to: 'wall:back', metres: 5 - y},
		{from: end, to: 'floor', metres: z},
	];
}

const distancesOf = (profile: Profile) => networkDistances(adjustNetwork(profile), 'middle');
const distance = (a: keyof typeof places, b: keyof typeof places) =>
	Math.hypot(...places[a].map((coordinate, axis) => coordinate - places[b][axis]!));
const room = {
	name: 'Invented room',
	widthMetres: 4,
	lengthMetres: 5,
	ceiling: {kind: 'flat', heightMetres: 2.5},
} as const;
const walls = (['middle', 'FL', 'FR'] as const).flatMap(wallReadings);

describe('networkDistances', () => {
	test('is empty where nothing was measured', () => {
		expect(distancesOf(emptyRoom()).size).toBe(0);
		expect(networkDistances(undefined, 'middle').size).toBe(0);
	});

	test('gives a distance that nobody read, by Pythagoras, to the seat', () => {
		const profile = emptyRoom({room, tape: walls});
		const found = distancesOf(profile).get(tapeKey('middle', 'FL'))!;
		// √(1.2² + 2.9²) = 3.1385 m.
		expect(found.metres).toBeCloseTo(3.1385, 4);
		const {channels} = solve(profile);
		expect(channels[0]!.distance).toMatchObject({from: 'network', readings: 0});
		expect(channels[0]!.remarks.map(({code}) => code)).toContain('distance-from-network');
	});

	test('is surer than the direct reading that it holds', () => {
		const profile = emptyRoom({
			room,
			tape: [...walls, {from: 'FL', to: 'middle', metres: distance('FL', 'middle')}],
		});
		const found = distancesOf(profile).get(tapeKey('middle', 'FL'))!;
		// One reading of 3.14 m, held by hand: √(2² + 3.14² + 12² + 7²) = 14.4 mm.
		expect(found.sigmaMetres).toBeLessThan(0.0144);
		expect(found.sigmaMetres).toBeGreaterThan(0.0005);
	});

	test('marks a distance whose direct reading cannot be right, and solve then keeps to the reading', () => {
		const wrong = distance('FL', 'middle') + 0.3048;
		const profile = emptyRoom({room, tape: [...walls, {from: 'FL', to: 'middle', metres: wrong}]});
		expect(distancesOf(profile).get(tapeKey('middle', 'FL'))).toMatchObject({isSuspected: true});
		const [fl] = solve(profile).channels;
		expect(fl!.distance!.metres).toBeCloseTo(wrong, 9);
		expect(fl!.remarks).toContainEqual(expect.objectContaining({kind: 'doubt', code: 'distance-suspected'}));
	});
});
