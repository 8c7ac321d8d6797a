import {expect, test} from 'vitest';
import {withoutBackground} from '../../../source/science/acoustics/background.ts';

// ISO 3744 and ISO 11201: K1 = −10·lg(1 − 10^(−ΔL/10)), from 0.14 dB at 15 dB to 1.26 dB at 6 dB;
// the other rows evaluated independently, all to two decimals.
test.each([
	[15, 0.14],
	[12, 0.28],
	[10, 0.46],
	[9, 0.58],
	[8, 0.75],
	[7, 0.97],
	[6, 1.26],
])('withoutBackground corrects %f dB above the background by %f dB', (differenceDb, k1) => {
	const {verdict, correctionDb, levelDb} = withoutBackground(70 + differenceDb, 70);
	expect(verdict).toBe('corrected');
	expect(Math.abs(correctionDb + k1)).toBeLessThanOrEqual(0.0051);
	expect(levelDb).toBeCloseTo(70 + differenceDb + correctionDb, 12);
});

test.each([
	[5, 1.65],
	[4, 2.2],
])('withoutBackground corrects %f dB above by %f dB and calls it unreliable', (differenceDb, k1) => {
	const {verdict, correctionDb} = withoutBackground(70 + differenceDb, 70);
	expect(verdict).toBe('unreliable');
	expect(Math.abs(correctionDb + k1)).toBeLessThanOrEqual(0.0051);
});

test('withoutBackground leaves out a background more than 15 dB below', () => {
	expect(withoutBackground(85.1, 70)).toEqual({
		verdict: 'left out',
		levelDb: 85.1,
		correctionDb: 0,
		sigmaFactor: 1,
	});
});

test('withoutBackground refuses 3 dB and less, also a background above the reading', () => {
	for (const levelDb of [73, 70, 60]) {
		expect(withoutBackground(levelDb, 70)).toMatchObject({verdict: 'refused', levelDb});
	}

	expect(withoutBackground(73.01, 70).verdict).toBe('unreliable');
});

test('withoutBackground takes 89 dB out of 93 dB and leaves 90.8 dB', () => {
	// Published worked example: 90.7 from a rounded table; exactly 10·lg(10^9.3 − 10^8.9) = 90.795.
	expect(withoutBackground(93, 89).levelDb).toBeCloseTo(90.795, 3);
	expect(Math.abs(withoutBackground(93, 89).levelDb - 90.7)).toBeLessThanOrEqual(0.1);
});

test('withoutBackground grows the uncertainty by the derivative of the corrected level', () => {
	const slope = (withoutBackground(76.001, 70).levelDb - withoutBackground(75.999, 70).levelDb) / 0.002;
	// 1 / (1 − 10^−0.6) = 1.335
	expect(withoutBackground(76, 70).sigmaFactor).toBeCloseTo(1.335, 3);
	expect(withoutBackground(76, 70).sigmaFactor).toBeCloseTo(slope, 5);
});
