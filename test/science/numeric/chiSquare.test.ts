import {expect, test} from 'vitest';
import {chiSquareUpperTail} from '../../../source/science/numeric/chiSquare.ts';

test('chiSquareUpperTail is 1 at zero, 0 at infinity, and refuses what is out of range', () => {
	expect(chiSquareUpperTail(0, 3)).toBe(1);
	expect(chiSquareUpperTail(Number.POSITIVE_INFINITY, 3)).toBe(0);
	expect(() => chiSquareUpperTail(-1, 3)).toThrow('value must be ≥ 0, got -1');
	expect(() => chiSquareUpperTail(1, 0)).toThrow('degrees must be > 0, got 0');
});

// Percentage points of the usual printed table (Abramowitz and Stegun, table 26.8), to its three decimals:
// half a unit of the last decimal moves the probability by less than 1e-3 of itself.
test.each([
	[3.841, 1, 0.05],
	[5.991, 2, 0.05],
	[11.07, 5, 0.05],
	[18.307, 10, 0.05],
	[10.828, 1, 0.001],
	[29.588, 10, 0.001],
	[124.342, 100, 0.05],
])('chiSquareUpperTail(%f, %i) is the table value %f', (value, degrees, expected) => {
	expect(Math.abs(chiSquareUpperTail(value, degrees) / expected - 1)).toBeLessThan(1e-3);
});

test('chiSquareUpperTail is exp(−x/2) for two degrees of freedom', () => {
	for (const value of [0.1, 1, 4, 10, 40, 200]) {
		expect(chiSquareUpperTail(value, 2) / Math.exp(-value / 2)).toBeCloseTo(1, 11);
	}
});
