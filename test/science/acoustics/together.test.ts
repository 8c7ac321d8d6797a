import {expect, test} from 'vitest';
import {combinedLevelDb, meanCosine} from '../../../source/science/acoustics/together.ts';

// Mean of cos(2πfτ) over ln f: (Ci(2π·f2·τ) − Ci(2π·f1·τ)) / ln(f2/f1), Ci from scipy.special.sici.
test.each([
	[28.2, 112.2, 2, 0.69126],
	[28.2, 112.2, 5, -0.2208],
	[40, 90, 1, 0.92214],
	[40, 90, 10, -0.49641],
])('meanCosine over %f–%f Hz at %f ms is the cosine integral', (fromHertz, toHertz, lagMs, expected) => {
	// 48 midpoints over two octaves: the sum is off by (2π·f·τ·Δ ln f)²/24, below 0.001 here.
	expect(meanCosine(fromHertz, toHertz, lagMs)).toBeCloseTo(expected, 2);
});

test('meanCosine of no lag is 1', () => {
	expect(meanCosine(28.2, 112.2, 0)).toBe(1);
});

test('combinedLevelDb adds 20·lg 2 in phase, 10·lg 2 without relation, and holds a cancellation 40 dB down', () => {
	expect(combinedLevelDb([70, 70], () => 1)).toBeCloseTo(70 + 20 * Math.log10(2), 9);
	expect(combinedLevelDb([70, 70], () => 0)).toBeCloseTo(70 + 10 * Math.log10(2), 9);
	expect(combinedLevelDb([70, 70], () => -1)).toBeCloseTo(70 + 10 * Math.log10(2) - 40, 9);
	expect(combinedLevelDb([70], () => 1)).toBeCloseTo(70, 9);
});
