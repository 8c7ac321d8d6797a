import {expect, test} from 'vitest';
import {countedBursts, countedSeconds} from '../../../source/science/signal/counted.ts';

const noise = Float64Array.from({length: 1000}, (_, n) => (n % 2 === 0 ? 1 : -1));

/** Runs of sound, silences of more than 50 ms between them. */
function heard(samples: Float64Array): number[] {
	const starts: number[] = [];
	let last = -48_000;
	for (const [index, value] of samples.entries()) {
		if (Math.abs(value) < 1e-6) continue;
		if (index - last > 2400) starts.push(index / 48_000);
		last = index;
	}

	return starts;
}

test.each([1, 2, 5, 6, 12])('countedBursts of %i sounds that many times', count => {
	const samples = countedBursts({noise, sampleRateHz: 48_000, count});
	expect(heard(samples).length).toBe(count);
	expect(samples.length).toBe(Math.round(countedSeconds(count) * 48_000));
});

test('countedBursts leaves a longer gap after each five, and silence at the end', () => {
	const samples = countedBursts({noise, sampleRateHz: 48_000, count: 11});
	const starts = heard(samples);
	const gaps = starts.slice(1).map((start, index) => start - starts[index]!);
	expect(gaps.flatMap((gap, index) => (gap > 0.4 ? [index + 1] : []))).toEqual([5, 10]);
	expect(samples.slice(-40_000).every(value => value === 0)).toBe(true);
});

test('countedBursts swells and fades, so that no step is larger than the noise makes at full level', () => {
	const steady = new Float64Array(10).fill(1);
	const samples = countedBursts({noise: steady, sampleRateHz: 48_000, count: 1});
	const largest = samples.reduce(
		(high, value, n) => Math.max(high, n === 0 ? 0 : Math.abs(value - samples[n - 1]!)),
		0,
	);
	expect(largest).toBeLessThan(0.005);
});
