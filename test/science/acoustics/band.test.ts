import {readFileSync} from 'node:fs';
import {expect, test} from 'vitest';
import {weightingOfSpectrum} from '../../../source/science/acoustics/band.ts';
import {weightingDb} from '../../../source/science/acoustics/weighting.ts';

type Row = {fromHertz: number; toHertz: number; aDb: number; cDb: number};
const {bands} = JSON.parse(
	readFileSync(new URL('../../reference/weightingBands.json', import.meta.url), 'utf8'),
) as {bands: Row[]};

test('weightingOfSpectrum of a band without width is that of the tone', () => {
	const tone = weightingOfSpectrum('A', {kind: 'tone', hertz: 63});
	expect(weightingOfSpectrum('A', {kind: 'pink', fromHertz: 63, toHertz: 63})).toBe(tone);
	expect(tone).toBe(weightingDb('A', 63));
});

test('weightingOfSpectrum does not mind which limit comes first', () => {
	const up = weightingOfSpectrum('C', {kind: 'pink', fromHertz: 28.2, toHertz: 112.2});
	expect(weightingOfSpectrum('C', {kind: 'pink', fromHertz: 112.2, toHertz: 28.2})).toBeCloseTo(up, 12);
});

test('weightingOfSpectrum refuses a limit of 0 Hz', () => {
	expect(() => weightingOfSpectrum('C', {kind: 'pink', fromHertz: 0, toHertz: 80})).toThrow(RangeError);
});

test('weightingOfSpectrum leaves an unweighted reading alone', () => {
	expect(weightingOfSpectrum('Z', {kind: 'pink', fromHertz: 28.2, toHertz: 112.2})).toBeCloseTo(0, 12);
});

test('weightingOfSpectrum of pink noise from 28.2 to 112.2 Hz is −1.23 dB for C and −24.3 dB for A', () => {
	const band = {kind: 'pink', fromHertz: 28.2, toHertz: 112.2} as const;
	expect(weightingOfSpectrum('C', band)).toBeCloseTo(-1.23, 2);
	expect(weightingOfSpectrum('A', band)).toBeCloseTo(-24.33, 2);
});

// scipy.integrate.quad to 1e-12 (weightingBands.py). Simpson's rule with 256 intervals errs by less than 1e-6 dB.
test.each(bands)(
	'weightingOfSpectrum matches scipy from $fromHertz to $toHertz Hz',
	({aDb, cDb, ...limits}) => {
		const band = {kind: 'pink', ...limits} as const;
		expect(Math.abs(weightingOfSpectrum('A', band) - aDb)).toBeLessThan(1e-6);
		expect(Math.abs(weightingOfSpectrum('C', band) - cDb)).toBeLessThan(1e-6);
	},
);
