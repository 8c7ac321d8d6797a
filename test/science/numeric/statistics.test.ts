import {readFileSync} from 'node:fs';
import {expect, test} from 'vitest';
import {
	combinedSigma,
	median,
	normalTail,
	sampleDeviation,
} from '../../../source/science/numeric/statistics.ts';

const {normalTail: rows} = JSON.parse(
	readFileSync(new URL('../../reference/weightingBands.json', import.meta.url), 'utf8'),
) as {normalTail: Array<{z: number; above: number}>};

// scipy.stats.norm.sf (weightingBands.py); the fit promises 1.2e-7 relative.
test.each(rows)('normalTail matches scipy at z = $z', ({z, above}) => {
	expect(Math.abs(normalTail(z) / above - 1)).toBeLessThan(1.2e-7);
});

test('normalTail holds at the ends', () => {
	expect(normalTail(Number.POSITIVE_INFINITY)).toBe(0);
	expect(normalTail(Number.NEGATIVE_INFINITY)).toBe(1);
});

test('combinedSigma of the contributions of GUM example H.1 is 31.7 nm, printed as 32', () => {
	// JCGM 100:2008, H.1.4: u²(l) = 25² + 9.7² + 2.9² + 16.6² nm², printed as 32 nm (from memory); 31.67 by the sum itself.
	expect(combinedSigma(25, 9.7, 2.9, 16.6)).toBeCloseTo(31.7, 1);
	expect(combinedSigma()).toBe(0);
});

test('median takes the middle, or the mean of the two middles, and leaves the list alone', () => {
	const list = [3, 1, 2];
	expect(median(list)).toBe(2);
	expect(list).toEqual([3, 1, 2]);
	expect(median([10, 2, 4, 3])).toBe(3.5);
	expect(() => median([])).toThrow('at least one');
});

test('sampleDeviation divides by n − 1, and is 0 for one value', () => {
	// 2, 4, 4, 4, 5, 5, 7, 9: squares about the mean of 5 add up to 32, so √(32/7) = 2.138.
	expect(sampleDeviation([2, 4, 4, 4, 5, 5, 7, 9])).toBeCloseTo(2.138, 3);
	expect(sampleDeviation([4])).toBe(0);
});
