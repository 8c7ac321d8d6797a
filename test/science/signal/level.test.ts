import {expect, test} from 'vitest';
import {crestDb, levelDbfs, peakOf, rmsOfDbfs, setLevel} from '../../../source/science/signal/level.ts';

const sine = Float64Array.from({length: 997}, (_, n) => Math.sin((2 * Math.PI * 13 * n) / 997));
const square = Float64Array.from({length: 100}, (_, n) => (n % 2 === 0 ? 1 : -1));

// AES17: a full-scale sine is 0 dBFS, a full-scale square +3.01 dBFS.
test('levelDbfs is 0 for a full-scale sine and 3.01 dB for a full-scale square', () => {
	expect(levelDbfs(sine)).toBeCloseTo(0, 10);
	expect(levelDbfs(square)).toBeCloseTo(3.0103, 4);
});

test('rmsOfDbfs is 0.7071 of full scale at 0 dBFS and a tenth of it at −20 dBFS', () => {
	expect(rmsOfDbfs(0)).toBeCloseTo(Math.SQRT1_2, 12);
	expect(rmsOfDbfs(-20)).toBeCloseTo(Math.SQRT1_2 / 10, 12);
});

test('crestDb is 3.01 dB for a sine and 0 dB for a square', () => {
	expect(crestDb(sine)).toBeCloseTo(3.0103, 3);
	expect(crestDb(square)).toBeCloseTo(0, 10);
});

test('setLevel brings samples to the level, in place', () => {
	const samples = sine.slice();
	expect(setLevel(samples, -30)).toBe(samples);
	expect(levelDbfs(samples)).toBeCloseTo(-30, 10);
	expect(peakOf(samples)).toBeCloseTo(10 ** -1.5, 4);
});
