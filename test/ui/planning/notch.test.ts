import {expect, test} from 'vitest';
import {readNotch} from '../../../source/ui/planning/notch.ts';

test.each([
	['back right 1.5m 2m', 'm', 'backRight', 1.5, 2],
	['front left 1.2m / 0.9m', 'm', 'frontLeft', 1.2, 0.9],
	// A foot is 0.3048 m, an inch 0.0254 m, exact: 4 feet 6.5 inches and 6 feet.
	['back left 4 6 1/2 x 6', 'ft-in', 'backLeft', 1.3843, 1.8288],
	['back left 4-6.5 6', 'ft-in', 'backLeft', 1.3843, 1.8288],
] as const)('“%s” is a corner that is missing, in %s', (text, unit, corner, widthMetres, lengthMetres) => {
	const read = readNotch(text, unit);
	if (typeof read === 'string') throw new Error(read);
	expect(read.corner).toBe(corner);
	expect(read.widthMetres).toBeCloseTo(widthMetres, 9);
	expect(read.lengthMetres).toBeCloseTo(lengthMetres, 9);
});

test.each(['back right', 'middle 1m 1m', 'back right 1m 2m 3m', 'back right 1m x'])(
	'“%s” is none, and is told how one is typed',
	text => {
		expect(readNotch(text, 'm')).toContain('Such as: notch back right');
	},
);
