import {expect, test} from 'vitest';
import {crossoverCurves} from '../../../../source/study/calibration/crossover/curve.ts';
import {subModel} from '../../../../source/study/calibration/crossover/model.ts';

const management = {
	highPass: {kind: 'butterworth', order: 2},
	lowPass: {kind: 'linkwitz-riley', order: 4},
} as const;

// Linkwitz (1976): −6.02 dB each and 0 dB together; the closed box makes the high-pass a Linkwitz-Riley one.
test('crossoverCurves meet at −6.02 dB and sum to 0 dB for a box that ends at the crossover', () => {
	const curves = crossoverCurves(
		{lowLimitHertz: 89.442_719},
		subModel([]),
		management,
		89.442_719,
		0,
		false,
		3,
	);
	expect(curves.frequenciesHz[1]).toBeCloseTo(89.442_719, 4);
	expect(curves.mainsDb[1]).toBeCloseTo(-6.0206, 3);
	expect(curves.subDb[1]).toBeCloseTo(-6.0206, 3);
	for (const levelDb of curves.sumDb) expect(levelDb).toBeCloseTo(0, 5);
});

test('crossoverCurves cancel at the crossover when the sub is inverted', () => {
	const {sumDb} = crossoverCurves(
		{lowLimitHertz: 89.442_719},
		subModel([]),
		management,
		89.442_719,
		0,
		true,
		3,
	);
	expect(sumDb[1]).toBeLessThan(-60);
});

test('crossoverCurves cancel half a period of delay away from the best', () => {
	const half = 500 / 89.442_719;
	const {sumDb} = crossoverCurves(
		{lowLimitHertz: 89.442_719},
		subModel([]),
		management,
		89.442_719,
		half,
		false,
		3,
	);
	expect(sumDb[1]).toBeLessThan(-60);
});
