import {expect, test} from 'vitest';
import {sparkline} from '../../source/report/sparkline.ts';

test('`sparkline` of nothing is empty, of gaps alone blank, of one value flat', () => {
	expect(sparkline([], 8)).toBe('');
	expect(sparkline([undefined, undefined], 8)).toBe('  ');
	expect(sparkline([5], 8)).toBe('▄');
});

test('`sparkline` runs from the lowest bar to the highest and leaves gaps', () => {
	expect(sparkline([0, 1, undefined, 7], 8)).toBe('▁▂ █');
});

test('`sparkline` draws differences below the least span flat', () => {
	expect(sparkline([1, 1.2, 0.9], 8, 0.5)).toBe('▄▄▄');
});

test('`sparkline` averages neighbours where there are more values than cells', () => {
	expect(sparkline([0, 0, 10, 10], 2)).toBe('▁█');
	expect(
		sparkline(
			Array.from({length: 1000}, (_, index) => index),
			16,
		),
	).toHaveLength(16);
});
