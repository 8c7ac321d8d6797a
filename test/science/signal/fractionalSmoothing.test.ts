import fc from 'fast-check';
import {expect, test} from 'vitest';
import {fractionalSmoothing} from '../../../source/science/signal/fractionalSmoothing.ts';

const grid = Float64Array.from({length: 481}, (_, index) => 20 * 2 ** (index / 48));

test('one point and two points stay as they are where the window holds nothing else', () => {
	expect(fractionalSmoothing([1000], [-3], 3)[0]).toBeCloseTo(-3, 9);
	const two = fractionalSmoothing([100, 1000], [0, 10], 3);
	expect(two[0]).toBeCloseTo(0, 9);
	expect(two[1]).toBeCloseTo(10, 9);
});

test('a level curve stays level, and smoothing never leaves the range of what it smooths', () => {
	fc.assert(
		fc.property(
			fc.array(fc.double({min: -60, max: 20, noNaN: true}), {minLength: 10, maxLength: 200}),
			fc.integer({min: 1, max: 48}),
			(levels, perOctave) => {
				const frequencies = levels.map((_, index) => 20 * 2 ** (index / 24));
				const smoothed = fractionalSmoothing(frequencies, levels, perOctave);
				for (const value of smoothed) {
					expect(value).toBeLessThanOrEqual(Math.max(...levels) + 1e-6);
					expect(value).toBeGreaterThanOrEqual(Math.min(...levels) - 1e-6);
				}
			},
		),
	);
});

// Closed form: |1 + g·e^(−jωτ)|² averaged over f·2^(±1/2n). With u = ln f the mean of cos(2πτe^u) over the window is
// (Ci(b) − Ci(a))/(b's ln − a's ln); far above 1/τ it vanishes, and the smoothed comb is 10·lg(1 + g²).
test('a comb smoothed where a window holds many teeth is the sum of the powers', () => {
	const dense = Float64Array.from({length: 4000}, (_, index) => 2000 * 2 ** (index / 1000));
	const [gain, delay] = [0.5, 0.02];
	const levels = dense.map(
		f =>
			10 *
			Math.log10(
				(1 + gain * Math.cos(2 * Math.PI * f * delay)) ** 2 + (gain * Math.sin(2 * Math.PI * f * delay)) ** 2,
			),
	);
	const smoothed = fractionalSmoothing(dense, levels, 1);
	// 14 teeth or more in an octave from 2 kHz: what is left of them is under 0.1 dB.
	expect(smoothed[2000]).toBeCloseTo(10 * Math.log10(1.25), 1);
});

test('the density of the grid does not matter', () => {
	const coarse = Float64Array.from({length: 121}, (_, index) => 20 * 2 ** (index / 12));
	const slope = (f: number) => 10 * Math.log10(f / 100);
	const fine = fractionalSmoothing(grid, grid.map(slope), 3);
	const rough = fractionalSmoothing(coarse, coarse.map(slope), 3);
	expect(rough[60]).toBeCloseTo(fine[240]!, 1);
});
