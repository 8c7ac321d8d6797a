import {expect, test} from 'vitest';
import {normalQuantileAbove} from '../../../source/science/numeric/normalQuantile.ts';

// Tables of the normal distribution (scipy.stats.norm.isf to seven digits). 3.2905 is Baarda's value for one test in a
// thousand; 0.02/70 and 0.02/140 are two in a hundred shared by 35 and by 70 two-sided tests.
test.each([
	[0.5, 0],
	[0.025, 1.959964],
	[0.0005, 3.290527],
	[0.02 / 70, 3.444825],
	[0.02 / 140, 3.62792],
	[1e-7, 5.199338],
])('the normal value above which lies %f', (probability, expected) => {
	// The tail itself is known to 1.2e-7 of its value.
	expect(Math.abs(normalQuantileAbove(probability) - expected)).toBeLessThan(2e-6);
});

test('a probability that is none is refused', () => {
	for (const value of [0, -0.1, 0.6, Number.NaN])
		expect(() => normalQuantileAbove(value)).toThrow(RangeError);
});
