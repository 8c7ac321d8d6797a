import {expect, test} from 'vitest';
import {
	harmonicLead,
	sweepFrequency,
	sweepSamples,
	sweepTime,
	synchronisedSweep,
} from '../../../source/science/signal/sweep.ts';

test('synchronisedSweep refuses frequencies out of order and a time too short for one period', () => {
	expect(() => synchronisedSweep(0, 100, 1)).toThrow('got 0 and 100');
	expect(() => synchronisedSweep(100, 100, 1)).toThrow('got 100 and 100');
	expect(() => synchronisedSweep(15, 20_000, 0.1)).toThrow('aboutSeconds must be at least');
});

// Novak et al., J. Audio Eng. Soc. 63 (2015) 786: L = round(f1·T/ln(f2/f1))/f1; for 20 Hz to 20 kHz in 10 s it is 1.45 s,
// where Farina's (AES 108th Convention, 2000) unrounded L is 1.44764827 s. Values computed by hand from the formulas.
test('synchronisedSweep rounds to whole periods as published, and keeps the law of the frequency', () => {
	const law = synchronisedSweep(20, 20_000, 10);
	expect(law.rateSeconds).toBeCloseTo(1.45, 12);
	expect(law.seconds).toBeCloseTo(1.45 * Math.log(1000), 9);
	expect(sweepFrequency({...law, rateSeconds: 1.44764827}, 5)).toBeCloseTo(632.4555, 3);
	expect(sweepTime(law, sweepFrequency(law, 3.21))).toBeCloseTo(3.21, 9);
});

test.each([
	[2, 1.0034333],
	[3, 1.5904042],
	[4, 2.0068666],
	[5, 2.3299],
])('the product of harmonic %i stands ahead by L·ln n as Farina gives it', (harmonic, seconds) => {
	const farina = {...synchronisedSweep(20, 20_000, 10), rateSeconds: 1.44764827};
	expect(harmonicLead(farina, harmonic)).toBeCloseTo(seconds, 4);
});

test('the second harmonic of a synchronised sweep is the sweep itself, moved by its lead', () => {
	// Novak's condition: sin(2·φ(t)) = x(t + L·ln 2), since f1·L is whole.
	const law = synchronisedSweep(15, 20_000, 2);
	const rate = 48_000;
	const phase = (t: number) => 2 * Math.PI * 15 * law.rateSeconds * Math.exp(t / law.rateSeconds);
	const from = Math.ceil(0.4 * rate);
	const moved = sweepSamples(law, rate, -harmonicLead(law, 2) * rate, 30_000);
	for (const index of [from, from + 1000, from + 9999])
		expect(moved[index]).toBeCloseTo(Math.sin(2 * phase(index / rate)), 6);
});

test('sweepSamples follows the law between samples, at any clock, and is silent outside', () => {
	const law = synchronisedSweep(15, 20_000, 2);
	const rate = 44_100 * (1 - 35e-6);
	const samples = sweepSamples(law, rate, 100.25, 100_000);
	expect(samples.subarray(0, 101).every(value => value === 0)).toBe(true);
	for (const index of [30_000, 50_000, 70_123]) {
		const time = (index - 100.25) / rate;
		const phase = 2 * Math.PI * 15 * law.rateSeconds * Math.exp(time / law.rateSeconds);
		expect(samples[index]).toBeCloseTo(Math.sin(phase), 6);
	}

	expect(samples.subarray(Math.ceil(100.25 + law.seconds * rate) + 1).every(value => value === 0)).toBe(true);
});
