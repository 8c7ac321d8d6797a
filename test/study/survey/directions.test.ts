import fc from 'fast-check';
import {expect, test} from 'vitest';
import {directionOf, unitVector, wrapDegrees} from '../../../source/study/survey/directions.ts';

test('wrapDegrees keeps 180 and turns −180 into it', () => {
	expect([180, -180, 540, 181, -181, 0].map(wrapDegrees)).toEqual([180, 180, 180, -179, 179, 0]);
});

test('directionOf follows the sign convention: left and up are positive', () => {
	expect(directionOf([-1, -1, 0]).azimuthDegrees).toBeCloseTo(45, 12);
	expect(directionOf([1, 0, 0]).azimuthDegrees).toBeCloseTo(-90, 12);
	expect(directionOf([0, 1, 1]).elevationDegrees).toBeCloseTo(45, 12);
});

test('directionOf undoes unitVector', () => {
	fc.assert(
		fc.property(
			fc.double({min: -179.9, max: 180, noNaN: true}),
			fc.double({min: -89, max: 89, noNaN: true}),
			(azimuthDegrees, elevationDegrees) => {
				const found = directionOf(unitVector({azimuthDegrees, elevationDegrees}));
				expect(Math.abs(wrapDegrees(found.azimuthDegrees - azimuthDegrees))).toBeLessThan(1e-9);
				expect(Math.abs(found.elevationDegrees - elevationDegrees)).toBeLessThan(1e-9);
			},
		),
		{seed: 2},
	);
});
