import {expect, test} from 'vitest';
import {matchedFilter} from '../../../source/science/signal/matchedFilter.ts';

const rate = 48_000;
/** A burst of 1 to 3 kHz, Gaussian, so that nothing lies above 4 kHz. */
const burst = Float64Array.from({length: 480}, (_, index) => {
	const time = (index - 240) / rate;
	return Math.exp(-((time / 0.0012) ** 2)) * Math.cos(2 * Math.PI * 2000 * time);
});

test('matchedFilter gives the envelope of the sum of products at every eighth lag', () => {
	const {length, every, correlate} = matchedFilter(burst, rate, 4000, 2000);
	expect([length, every]).toEqual([2048, 8]);
	const block = Float64Array.from({length}, (_, index) => 0.01 * Math.sin(index * index * 1e-4));
	block.set(burst, 704);
	const correlation = correlate(block);
	expect(correlation).toHaveLength(length / every);
	// By definition; the envelope is touched where the sum has its largest value, and never left.
	const sumAt = (lag: number) =>
		burst.reduce((sum, value, index) => sum + value * (block[lag + index] ?? 0), 0);
	for (const place of [0, 10, 85, 90, 150])
		expect(correlation[place]! + 1e-4).toBeGreaterThanOrEqual(Math.abs(sumAt(place * every)));
	expect(correlation[88]! / sumAt(704)).toBeCloseTo(1, 3);
});

test('matchedFilter peaks where the template lies', () => {
	const {length, every, correlate} = matchedFilter(burst, rate, 4000, 2000);
	const block = new Float64Array(length);
	block.set(burst, 1200);
	const correlation = correlate(block);
	const best = correlation.reduce((top, value, index) => (value > correlation[top]! ? index : top), 0);
	expect(best * every).toBe(1200);
});
