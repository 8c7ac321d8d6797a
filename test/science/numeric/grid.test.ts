import fc from 'fast-check';
import {expect, test} from 'vitest';
import {
	atOrAbove,
	gridOf,
	highest,
	lowest,
	nearest,
	point,
	shownValue,
} from '../../../source/science/numeric/grid.ts';

test('a control shows its minimum, and every step from there up to its maximum', () => {
	const grid = gridOf({exact: 0, step: 0.1, minimum: -0.3, maximum: 0.3}, 0);
	// 0.3 − −0.3 is not six times 0.1 in binary.
	expect(grid.kHigh - grid.kLow).toBe(6);
	expect([0, 1, 2, 3, 4, 5, 6].map(k => shownValue(grid, k))).toEqual([-0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3]);
	expect(Object.is(shownValue(grid, 3), -0)).toBe(false);
});

test('a maximum between two steps is not shown', () => {
	expect(gridOf({exact: 0, step: 0.5, minimum: 0, maximum: 1.2}, 0).kHigh).toBe(2);
});

test('positions are relative to what is wanted', () => {
	const grid = gridOf({exact: 1.2, step: 0.5, minimum: 0, maximum: 3}, 0);
	expect(lowest(grid)).toBeCloseTo(-1.2, 12);
	expect(highest(grid)).toBeCloseTo(1.8, 12);
	expect(shownValue(grid, nearest(grid, 0))).toBe(1);
	expect(shownValue(grid, atOrAbove(grid, 0)!)).toBe(1.5);
	expect(atOrAbove(grid, 2)).toBeUndefined();
});

test('of two equally near points the lower is taken', () => {
	const grid = gridOf({exact: 0.25, step: 0.5, minimum: 0, maximum: 3}, 0);
	expect(shownValue(grid, nearest(grid, 0))).toBe(0);
});

test('no point of the control is nearer than `nearest`', () => {
	fc.assert(
		fc.property(
			fc.double({min: -30, max: 30, noNaN: true}),
			fc.integer({min: 1, max: 60}),
			fc.integer({min: 1, max: 40}),
			(exact, steps, tenths) => {
				const step = tenths / 10;
				const grid = gridOf({exact, step, minimum: -10, maximum: -10 + steps * step}, 0);
				const distances = Array.from({length: steps + 1}, (_, k) => Math.abs(point(grid, k)));
				// Ties within the slack of a millionth of a step.
				expect(distances[nearest(grid, 0)]!).toBeLessThanOrEqual(Math.min(...distances) + 2e-6 * step);
			},
		),
	);
});

test.each([
	[{exact: Number.NaN, step: 1}, 'items[2].exact must be finite, got NaN'],
	[{exact: 0, step: 0}, 'items[2].step must be finite and > 0, got 0'],
	[{exact: 0, step: 1, minimum: 2, maximum: 1}, 'items[2].minimum must not exceed maximum, got 2 and 1'],
])('%o is refused by name', (item, text) => {
	expect(() => gridOf(item, 2)).toThrow(text);
});
