import {expect, test} from 'vitest';
import {judgeFullRange} from '../../../../source/study/calibration/crossover/fullRange.ts';

test('judgeFullRange leaves bass with the speaker where there is no sub, whatever is known', () => {
	expect(judgeFullRange({}, undefined, false, false).defensible).toBe(true);
});

test('judgeFullRange says no where the receiver has no such setting, or nothing is known', () => {
	expect(judgeFullRange({lowLimitHertz: 20}, 25, true, false).why.code).toBe('full-range-not-offered');
	expect(judgeFullRange({}, 25, true, true)).toMatchObject({
		defensible: false,
		why: {code: 'limit-not-known'},
	});
});

// Common practice, no source: full range from 40 Hz down, or as deep as the sub.
test.each([
	[50, 55, true],
	[38, 25, true],
	[45, 25, false],
])('judgeFullRange of a speaker to %i Hz beside a sub to %i Hz is %s', (lowLimitHertz, sub, expected) => {
	expect(judgeFullRange({lowLimitHertz}, sub, true, true).defensible).toBe(expected);
});
