import {expect, test} from 'vitest';
import {rankCommon} from '../../../../source/study/calibration/crossover/common.ts';
import type {CrossoverChoice} from '../../../../source/study/calibration/crossover/rank.ts';

const choice = (hertz: number, cost: number, belowLimit = false) =>
	({hertz, cost, belowLimit}) as unknown as CrossoverChoice;

test('rankCommon is empty without channels', () => {
	expect(rankCommon([])).toEqual([]);
});

test('80 Hz wins what is otherwise a draw, within half a point, unless it lies below a limit', () => {
	const first = (choices: Parameters<typeof rankCommon>[0]) => rankCommon(choices)[0]!.hertz;
	expect(first([[choice(80, 2.4), choice(100, 2)]])).toBe(80);
	expect(first([[choice(80, 2.6), choice(100, 2)]])).toBe(100);
	expect(first([[choice(80, 2, true), choice(100, 2)]])).toBe(100);
});

test('rankCommon leads with the smallest mean cost, but never below the limit of any channel', () => {
	const ranking = rankCommon([
		[choice(60, 1), choice(80, 2), choice(100, 2)],
		[choice(60, 1, true), choice(80, 4), choice(100, 2)],
	]);
	expect(ranking).toEqual([
		{hertz: 100, cost: 2, belowLimit: false},
		{hertz: 80, cost: 3, belowLimit: false},
		{hertz: 60, cost: 1, belowLimit: true},
	]);
});
