import {expect, test} from 'vitest';
import {smallestArc} from '../../../source/science/numeric/smallestArc.ts';

test('smallestArc of fewer than two values is 0', () => {
	expect(smallestArc([], 1)).toBe(0);
	expect(smallestArc([0.7], 1)).toBe(0);
});

test('smallestArc runs across zero when that is shorter', () => {
	// 0.9 and 0.2 on a circle of 1: 0.3 across zero, 0.7 the other way.
	expect(smallestArc([0.9, 5.2], 1)).toBeCloseTo(0.3, 12);
	expect(smallestArc([-0.1, -4.8], 1)).toBeCloseTo(0.3, 12);
});

test('smallestArc of values all around is the circle less one gap', () => {
	expect(smallestArc([0, 0.25, 0.5, 0.75], 1)).toBeCloseTo(0.75, 12);
});
