import {expect, test} from 'vitest';
import {bestOffset, meanLevelDb} from '../../../../source/study/calibration/blend/bestState.ts';
import type {ToneSum} from '../../../../source/study/calibration/blend/toneSum.ts';

/** Two equal sounds of power 1 that meet in phase when the second is `lateMs` later. */
const meeting = (hertz: number, lateMs: number, sign = 1): ToneSum => {
	const angle = (2 * Math.PI * hertz * lateMs) / 1000;
	return {
		hertz,
		a: 2,
		b: 2 * sign * Math.cos(angle),
		c: 2 * sign * Math.sin(angle),
		covariance: [
			[0.01, 0, 0],
			[0, 0.01, 0],
			[0, 0, 0.01],
		],
		beyondSigmas: 0,
		likeliestIndex: 0,
	};
};
const stands = {laterMs: 0, inverted: false};
const three = (lateMs: number, sign = 1) => [64, 80, 100].map(hertz => meeting(hertz, lateMs, sign));

test('bestOffset finds the delay at which all tones meet in phase', () => {
	const sums = new Map([['FC', three(3.2)]]);
	const best = bestOffset(sums, stands, 9.375, 0.1);
	expect(best.inverted).toBe(false);
	// A draw of 0.05 dB: two equal sounds 0.21 radians apart, 0.43 ms at 80 Hz.
	expect(Math.abs(best.laterMs - 3.2)).toBeLessThan(0.45);
	// Two equal sounds in phase make 20·lg 2 above one.
	expect(meanLevelDb(sums, {laterMs: 3.2, inverted: false})).toBeCloseTo(20 * Math.log10(2), 9);
	expect(best.gainDb.value).toBeGreaterThan(3);
});

test('bestOffset turns the polarity where the sounds meet turned', () => {
	const best = bestOffset(new Map([['FC', three(1, -1)]]), stands, 9.375, 0.1);
	expect(best).toMatchObject({inverted: true});
	expect(Math.abs(best.laterMs - 1)).toBeLessThan(0.45);
});

test('one setting serves all fronts: between two that want it elsewhere', () => {
	const best = bestOffset(
		new Map([
			['FL', three(1)],
			['FR', three(3)],
		]),
		stands,
		9.375,
		0.1,
	);
	expect(best.laterMs).toBeGreaterThan(1.5);
	expect(best.laterMs).toBeLessThan(2.5);
});

test('what stands wins a draw, and nothing is sought farther than told', () => {
	expect(bestOffset(new Map([['FC', three(0.1)]]), stands, 9.375, 0.1)).toMatchObject({
		...stands,
		gainDb: {value: 0},
	});
	const far = bestOffset(new Map([['FC', three(11)]]), stands, 9.375, 0.1);
	expect(Math.abs(far.laterMs)).toBeLessThanOrEqual(0.75 * 12.5 + 1e-9);
});

test('a delay that the boxes do not reach is not proposed', () => {
	const best = bestOffset(new Map([['FC', three(4)]]), stands, 9.375, 0.1, laterMs => laterMs <= 1);
	expect(best.laterMs).toBeLessThanOrEqual(1);
});
