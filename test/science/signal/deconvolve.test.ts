import {expect, test} from 'vitest';
import {divide, dividerOf, partDivider} from '../../../source/science/signal/deconvolve.ts';
import {harmonicLead, sweepSamples, synchronisedSweep} from '../../../source/science/signal/sweep.ts';

const rate = 48_000;
const law = synchronisedSweep(15, 20_000, 2);
const length = 2 ** 18;
const sweep = sweepSamples(law, rate, 0, length);
const divider = dividerOf(sweep, rate, [15, 19.8, 17_000, 19_600]);

function throughPaths(paths: ReadonlyArray<readonly [samples: number, gain: number]>): Float64Array {
	const heard = new Float64Array(length);
	for (const [delay, gain] of paths)
		for (let index = 0; index + delay < length; index += 1)
			heard[index + delay] = heard[index + delay]! + gain * sweep[index]!;
	return heard;
}

test('divide refuses a recording longer than its transform', () => {
	expect(() => divide(new Float64Array(length + 1), divider)).toThrow(
		`at most ${length} samples, got ${length + 1}`,
	);
});

test('divide finds every path of a comb at its place, with its gain and sign', () => {
	const response = divide(
		throughPaths([
			[400, 1],
			[643, -0.5],
			[2000, 0.25],
		]),
		divider,
	);
	// A band that ends at 17 to 19.6 kHz holds 0.76 of the peak of a whole one: gains are taken against the first.
	const peak = response[400]!;
	expect(peak).toBeGreaterThan(0.7);
	// Side lobes of the band's edge reach 1e-3 at these distances.
	expect(response[643]! / peak).toBeCloseTo(-0.5, 2);
	expect(response[2000]! / peak).toBeCloseTo(0.25, 2);
});

test('a second harmonic stands ahead of the response by L·ln 2 and leaves it clean', () => {
	// A square law adds (1 − cos 2φ)/2: a second harmonic of half the size of the coefficient.
	const heard = sweep.map(value => value + 0.1 * value * value);
	const response = divide(heard, divider);
	const lead = Math.round(harmonicLead(law, 2) * rate);
	const ahead = response.subarray(length - lead - 40, length - lead + 40);
	const product = Math.max(...ahead.map(Math.abs));
	expect(product).toBeGreaterThan(0.02);
	// Between the two nothing is left of it but the band's edges.
	const between = response.subarray(length - lead + 2000, length - 2000);
	expect(Math.max(...between.map(Math.abs))).toBeLessThan(0.02 * product);
});

test.each([
	[-600, 3000, 130_000],
	[-5280, 40_000, 162_000],
	[100, 500, 20_000],
])('partDivider from sample %i on gives %i samples of what divide gives', (first, wanted, longest) => {
	const heard = throughPaths([
		[400, 1],
		[643, -0.5],
	]).subarray(0, longest);
	const whole = divide(heard, divider);
	const part = partDivider(divider, first, wanted, longest).divide(heard);
	expect(part).toHaveLength(wanted);
	for (let index = 0; index < wanted; index += 7)
		expect(Math.abs(part[index]! - whole[(first + index + length) % length]!)).toBeLessThan(1e-10);
});

test('partDivider takes shorter recordings, and refuses longer ones', () => {
	const parts = partDivider(divider, 0, 1000, 100_000);
	const heard = throughPaths([[400, 1]]).subarray(0, 9000);
	expect(parts.divide(heard)[400]).toBeCloseTo(divide(heard, divider)[400]!, 10);
	expect(() => parts.divide(new Float64Array(100_001))).toThrow('at most 100000 samples, got 100001');
});
