import fc from 'fast-check';
import {expect, test} from 'vitest';
import {
	bothLevelDb,
	cosineFromLevels,
	cosineSigma,
} from '../../../../source/study/calibration/blend/cosine.ts';

// Two equal levels at a phase: gain over one of them, recomputed from the law of cosines, printed to 0.0001 dB.
const equalLevels = [
	[0, 6.0206],
	[30, 5.7195],
	[60, 4.7712],
	[90, 3.0103],
	[120, 0],
	[135, -2.3226],
	[150, -5.7195],
	[170, -15.1735],
	[175, -21.1858],
] as const;

test.each(equalLevels)('bothLevelDb of two equal levels at %i° is %f dB above one', (degrees, gainDb) => {
	const cosine = Math.cos((degrees * Math.PI) / 180);
	expect(Math.abs(bothLevelDb(70, 70, cosine) - 70 - gainDb)).toBeLessThan(1e-4);
	expect(cosineFromLevels(70 + gainDb, 70, 70)).toBeCloseTo(cosine, 4);
});

// Three-voltmeter method, a published exercise: 180 V and 200 V make 300 V together, cos φ = 0.244 (exact 0.24444).
test('cosineFromLevels gives the power factor of a three-voltmeter exercise', () => {
	const level = (volts: number) => 20 * Math.log10(volts);
	expect(cosineFromLevels(level(300), level(180), level(200))).toBeCloseTo(0.24444, 4);
});

// Coherent and incoherent addition of two equal levels: textbook values 6.02 and 3.01 dB.
test('bothLevelDb adds 6.02 dB in phase and 3.01 dB in quadrature', () => {
	expect(bothLevelDb(80, 80, 1)).toBeCloseTo(86.021, 3);
	expect(bothLevelDb(80, 80, 0)).toBeCloseTo(83.01, 3);
});

test('bothLevelDb holds a full cancellation at a finite level', () => {
	expect(bothLevelDb(80, 80, -1)).toBe(-20);
});

test('cosineFromLevels leaves −1 to 1 when the levels cannot belong together', () => {
	expect(cosineFromLevels(90, 75, 75)).toBeGreaterThan(1);
	expect(cosineFromLevels(50, 60, 75)).toBeLessThan(-1);
});

test('cosineFromLevels undoes bothLevelDb', () => {
	fc.assert(
		fc.property(
			fc.double({min: 40, max: 100, noNaN: true}),
			fc.double({min: -15, max: 15, noNaN: true}),
			fc.double({min: -0.99, max: 1, noNaN: true}),
			(still, difference, cosine) => {
				const both = bothLevelDb(still, still + difference, cosine);
				expect(cosineFromLevels(both, still, still + difference)).toBeCloseTo(cosine, 6);
			},
		),
	);
});

// Against finite differences of the formula itself, GUM eq. 10 with one input at a time.
test('cosineSigma is the first-order propagation of each level', () => {
	const [both, still, moved] = [76.2, 74.1, 72.9];
	const slope = (change: readonly number[]) =>
		(cosineFromLevels(both + change[0]!, still + change[1]!, moved + change[2]!) -
			cosineFromLevels(both - change[0]!, still - change[1]!, moved - change[2]!)) /
		2e-4;
	const expected = Math.hypot(
		0.3 * slope([1e-4, 0, 0]),
		0.4 * slope([0, 1e-4, 0]),
		0.5 * slope([0, 0, 1e-4]),
	);
	expect(cosineSigma(both, still, moved, [0.3, 0.4, 0.5])).toBeCloseTo(expected, 6);
});
