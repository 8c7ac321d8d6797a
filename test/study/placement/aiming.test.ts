import fc from 'fast-check';
import {expect, test} from 'vitest';
import {aims, firstSurface} from '../../../source/study/placement/aiming.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import type {RoomSize} from '../../../source/study/survey/roomSize.ts';
import {cross, distance, length, subtract, type Vector} from '../../../source/study/survey/vectors.ts';
import {ear, placedAt, roomSize, screenAhead} from '../survey/exampleNetwork.ts';
import {bareProfile} from '../survey/room.ts';

const size: RoomSize = {widthMetres: 5, lengthMetres: 6, ceiling: {heightMetres: 2.6}};

test('aims are none when the seat is not measured', () => {
	expect(aims(adjustNetwork(bareProfile()), 'sofa')).toEqual([]);
});

test('firstSurface finds no dot when the wall behind is not known', () => {
	expect(firstSurface({}, [1, 0.5, 1], ear)).toBeUndefined();
	expect(firstSurface({widthMetres: 5}, [1, 0.5, 1], ear)).toBeUndefined();
});

test('firstSurface is a hand-computed place on the back wall', () => {
	// From (1, 0.8, 1.1) through (2.5, 3.8, 1.1): one across for two along, so at y = 6 it is at x = 3.6, level.
	const dot = firstSurface(size, [1, 0.8, 1.1], ear)!;
	expect(dot.surface).toBe('wall:back');
	expect(dot.at.map(value => value.toFixed(6))).toEqual(['3.600000', '6.000000', '1.100000']);
	expect(dot.distances[0]!.from).toBe('wall:left');
	expect(dot.distances[0]!.metres).toBeCloseTo(3.6, 9);
	expect(dot.distances[1]).toMatchObject({from: 'floor'});
});

test('firstSurface meets floor, side wall and a sloped ceiling', () => {
	expect(firstSurface(size, [2.5, 3.8, 2.5], ear)!.surface).toBe('floor');
	expect(firstSurface(size, [0.2, 4.2, 1.2], ear)!.surface).toBe('wall:right');
	// Ceiling from 3 m in front to 2 m at the back: 3 − y/6. From (2.5, 0, 0.1) through (2.5, 3, 1.1) the beam is
	// 0.1 + y/3 high, which meets it at y = 2.9·2 = 5.8.
	const sloped: RoomSize = {...size, ceiling: {axis: 1, heightsMetres: [3, 2]}};
	const dot = firstSurface(sloped, [2.5, 0, 0.1], [2.5, 3, 1.1])!;
	expect(dot.surface).toBe('ceiling');
	expect(dot.at[1]).toBeCloseTo(5.8, 9);
});

test('firstSurface lies on the beam, beyond the ear, on its surface', () => {
	const inside = fc.tuple(
		fc.double({min: 0.1, max: 4.9, noNaN: true}),
		fc.double({min: 0.1, max: 5.9, noNaN: true}),
		fc.double({min: 0.1, max: 2.5, noNaN: true}),
	);
	fc.assert(
		fc.property(inside, inside, (start, through) => {
			fc.pre(distance(start, through) > 0.3);
			const dot = firstSurface(size, start, through)!;
			const beam = subtract(through, start);
			const line = subtract(dot.at, start);
			expect(length(cross(beam, line))).toBeLessThan(1e-9 * length(beam) * length(line) + 1e-9);
			expect(length(line)).toBeGreaterThan(length(beam));
			const gaps = [...dot.at, ...dot.at.map((value, axis) => roomSize[axis]! - value)];
			expect(Math.min(...gaps.map(Math.abs))).toBeLessThan(1e-9);
			expect(Math.min(...gaps)).toBeGreaterThan(-1e-9);
		}),
		{seed: 8},
	);
});

test('aims turn each speaker from its own wall towards the ear and tilt it by the height', () => {
	const {result} = placedAt({
		sofa: ear,
		screen: screenAhead,
		FL: [1, 0.8, 0.9],
		FC: [2.5, 0.4, 0.5],
		LS: [0.2, 4.2, 1.4],
		BL: [1.5, 5.8, 1.1],
		TpFL: [1.6, 2.6, 2.5],
	});
	const of = (id: string) => aims(result, 'sofa').find(aim => aim.id === id)!;
	// atan(1.5/3) = 26.565°; rise 0.2 m over 3.354 m = 3.413°.
	expect(of('FL')).toMatchObject({squareTo: 'wall:front', towards: 'wall:right'});
	expect(of('FL').toeDegrees).toBeCloseTo(26.565, 2);
	expect(of('FL').tiltDegrees).toBeCloseTo(3.413, 2);
	expect(of('FC').toeDegrees).toBeCloseTo(0, 3);
	expect(of('LS')).toMatchObject({squareTo: 'wall:left', towards: 'wall:front'});
	expect(of('LS').tiltDegrees).toBeLessThan(0);
	expect(of('BL')).toMatchObject({squareTo: 'wall:back', towards: 'wall:right'});
});

test('aims give a straight-down overhead its spot on the floor and how far it misses the ear', () => {
	const at: Vector = [1.6, 2.6, 2.5];
	const {result} = placedAt({sofa: ear, screen: screenAhead, TpFL: at});
	const {plumb, tiltDegrees} = aims(result, 'sofa').find(({id}) => id === 'TpFL')!;
	expect(plumb!.at[2]).toBe(0);
	expect(plumb!.distances.map(({from}) => from)).toEqual(['wall:left', 'wall:front']);
	expect(plumb!.distances[0]!.metres).toBeCloseTo(1.6, 5);
	// atan(1.5/1.4) off the plumb line; together with the tilt below level that makes a right angle.
	expect(plumb!.offAxisDegrees).toBeCloseTo((Math.atan(1.5 / 1.4) * 180) / Math.PI, 3);
	expect(plumb!.offAxisDegrees - tiltDegrees).toBeCloseTo(90, 6);
});
