import {expect, test} from 'vitest';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import {toBrokenCeiling} from '../../../source/study/survey/brokenCeiling.ts';
import {distance} from '../../../source/study/survey/vectors.ts';
import {bareProfile, inventedPlaces, thoroughEnds, withReadings} from './room.ts';

/** A ridge over the middle of five metres, both sides at 45°. */
const gable = [
	{atMetres: 0, heightMetres: 1.2},
	{atMetres: 2.5, heightMetres: 3.7},
	{atMetres: 5, heightMetres: 1.2},
];

test.each([
	// Below the ridge both sides are as near: half the height below it times √2.
	[2.5, 2.7, Math.SQRT1_2],
	// Below the left side: the gap straight up is 1 m, the way to a side at 45° its 1/√2.
	[1, 1.2, Math.SQRT1_2],
	[4, 1.2, Math.SQRT1_2],
	// Above the ceiling the way counts below zero.
	[1, 3.2, -Math.SQRT1_2],
])('from %d m along and %d m up it is %d m to a gable', (along, up, metres) => {
	const out = new Float64Array(6);
	expect(toBrokenCeiling(gable, along, up, out)).toBeCloseTo(metres, 12);
	// Every way is as long as its derivatives are together: the gradient of a distance has length 1.
	expect(Math.hypot(out[0]!, out[1]!)).toBeCloseTo(1, 12);
	// And they are what small steps show, off the ridge where the nearer side is one.
	if (along === 2.5) return;
	const step = 1e-6;
	const there = new Float64Array(6);
	const moved = toBrokenCeiling(gable, along + step, up, there) - metres;
	expect(moved / step).toBeCloseTo(out[0]!, 5);
	const lifted = toBrokenCeiling(gable, along, up + step, there) - metres;
	expect(lifted / step).toBeCloseTo(out[1]!, 5);
});

test('readings to a broken ceiling place what they are of, and none is accused', () => {
	const heights = [2.6, 3.2, 2.7];
	const places = heights.map((heightMetres, i) => ({atMetres: 2.1 * i, heightMetres}));
	const bare = bareProfile(inventedPlaces, {
		ceiling: {kind: 'broken', between: 'wall:left-wall:right', places},
	});
	const ends = thoroughEnds(bare).filter(
		([from, to]) => ![from, to].includes('ceiling') && !(from.startsWith('Tp') && to === 'floor'),
	);
	const read = withReadings(bare, ends);
	const out = new Float64Array(6);
	const overheads = ['TpSiL', 'TpSiR'].map(id => {
		const [x, , z] = inventedPlaces[id]!;
		return {from: id, to: 'ceiling', metres: toBrokenCeiling(places, x, z, out)};
	});
	const result = adjustNetwork({...read, tape: [...read.tape!, ...overheads]});
	for (const id of ['TpSiL', 'TpSiR'])
		expect(distance(result.points.find(point => point.id === id)!.at, inventedPlaces[id]!)).toBeLessThan(
			1e-3,
		);
	expect(result.suspects).toEqual([]);
	expect(result.readings.every(({status}) => status === 'used')).toBe(true);
});
