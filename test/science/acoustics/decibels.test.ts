import fc from 'fast-check';
import {expect, test} from 'vitest';
import {coherentSum, energyMean, energySum, spread} from '../../../source/science/acoustics/decibels.ts';

test('an empty list has no level', () => {
	for (const calculate of [energyMean, energySum, coherentSum, spread]) {
		expect(() => calculate([])).toThrow('levelsDb must hold at least one level, got none');
	}
});

test('energyMean refuses weights that are all zero', () => {
	expect(() => energyMean([70, 80], [0, 0])).toThrow('weights must have a sum > 0, got 0');
});

test('energySum of 85, 87 and 89 dB is 92 dB', () => {
	// Published worked example of adding levels, rounded to 92; 92.073 without rounding.
	expect(energySum([85, 87, 89])).toBeCloseTo(92.073, 3);
	expect(Math.round(energySum([85, 87, 89]))).toBe(92);
});

test('two equal levels add 3.01 dB on energy and 6.02 dB in phase', () => {
	// 10·lg 2 and 20·lg 2.
	expect(energySum([80, 80])).toBeCloseTo(83.0103, 4);
	expect(coherentSum([80, 80])).toBeCloseTo(86.0206, 4);
});

test('energyMean of 80 and 90 dB is 87.40 dB', () => {
	// 10·lg((1e8 + 1e9) / 2)
	expect(energyMean([80, 90])).toBeCloseTo(87.4036, 4);
});

test('energyMean counts a level as often as its weight says', () => {
	expect(energyMean([80, 90], [3, 1])).toBeCloseTo(energyMean([80, 80, 80, 90]), 10);
	expect(energyMean([80, 90], [1, 0])).toBeCloseTo(80, 10);
});

test('levels far beyond any room stay finite', () => {
	expect(energyMean([-300, 300])).toBeCloseTo(300 - 10 * Math.log10(2), 9);
	expect(energySum(Array.from({length: 200_000}, () => 70))).toBeCloseTo(70 + 10 * Math.log10(200_000), 6);
});

test('the mean lies between the smallest and the largest level, and spread is what lies between', () => {
	const levels = fc.array(fc.double({min: -100, max: 200, noNaN: true}), {minLength: 1, maxLength: 30});
	fc.assert(
		fc.property(levels, list => {
			const mean = energyMean(list);
			expect(mean).toBeGreaterThanOrEqual(Math.min(...list) - 1e-9);
			expect(mean).toBeLessThanOrEqual(Math.max(...list) + 1e-9);
			expect(spread(list)).toBeCloseTo(Math.max(...list) - Math.min(...list), 9);
		}),
		{seed: 7},
	);
});
