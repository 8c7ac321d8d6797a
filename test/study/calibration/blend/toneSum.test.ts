import fc from 'fast-check';
import {expect, test} from 'vitest';
import {fitToneSum, type SumReading, sumLevel} from '../../../../source/study/calibration/blend/toneSum.ts';
import reference from '../../../reference/toneSums.json' with {type: 'json'};

/** Level of two sounds together by the law of cosines, dB; ωτ turns the second back, a turned polarity by half a turn. */
function both(
	still: number,
	moved: number,
	phase: number,
	hertz: number,
	laterMs: number,
	inverted: boolean,
): number {
	const angle = phase - (2 * Math.PI * hertz * laterMs) / 1000;
	const sign = inverted ? -1 : 1;
	return (
		10 *
		Math.log10(
			Math.max(
				1,
				10 ** (still / 10) + 10 ** (moved / 10) + 2 * sign * 10 ** ((still + moved) / 20) * Math.cos(angle),
			),
		)
	);
}

const reading = (levelDb: number, laterMs: number, inverted = false, index = 0): SumReading => ({
	levelDb,
	laterMs,
	inverted,
	sigmaDb: 0.5,
	index,
});

test('three delays a third of a period apart give the level at every delay and polarity', () => {
	fc.assert(
		fc.property(
			fc.double({min: 60, max: 80, noNaN: true}),
			fc.double({min: 60, max: 80, noNaN: true}),
			fc.double({min: 0, max: 6.28, noNaN: true}),
			fc.double({min: -12, max: 12, noNaN: true}),
			fc.boolean(),
			(still, moved, phase, laterMs, inverted) => {
				const at = (later: number, turned: boolean) => both(still, moved, phase, 80, later, turned);
				const found = fitToneSum(80, [
					reading(at(1, false), 1),
					reading(at(1 + 12.5 / 3, false), 1 + 12.5 / 3),
					reading(at(1 + 25 / 3, false), 1 + 25 / 3),
				])!;
				const parts = 10 * Math.log10(10 ** (still / 10) + 10 ** (moved / 10));
				// Below that a cancellation is held.
				const expected = Math.max(at(laterMs, inverted), parts - 20);
				expect(sumLevel(found, laterMs, inverted).value).toBeCloseTo(expected, 6);
			},
		),
		{seed: 1},
	);
});

test.each(reference.map((one, index) => [index, one] as const))(
	'fitToneSum agrees with scipy.optimize.least_squares on the same readings, case %i',
	(_, {hertz, readings, abc, covariance}) => {
		const found = fitToneSum(
			hertz,
			readings.map((each, index) => ({...each, index})),
		)!;
		const [a, b, c] = abc as [number, number, number];
		// Both are double precision; scipy stops at a relative step of 1e-15 of a quadratic.
		for (const [own, scipy] of [
			[found.a, a],
			[found.b, b],
			[found.c, c],
		] as const)
			expect(Math.abs(own - scipy)).toBeLessThan(1e-6 * a);
		for (const [i, row] of covariance.entries())
			for (const [j, entry] of row.entries())
				expect(Math.abs(found.covariance[i]![j]! - entry)).toBeLessThan(1e-5 * covariance[0]![0]!);
	},
);

test('fitToneSum gives nothing where delays do not tell the three apart', () => {
	expect(fitToneSum(80, [reading(70, 0), reading(71, 4)])).toBeUndefined();
	// A whole period and half of one turned are the same state.
	expect(fitToneSum(80, [reading(70, 0), reading(70, 12.5), reading(71, 6.25, true)])).toBeUndefined();
});

test('a sum that no two sounds make is told, with the reading that is likeliest wrong', () => {
	const at = (laterMs: number) => both(70, 70, 1, 80, laterMs, false);
	const delays = [0, 12.5 / 3, 25 / 3];
	const sound = delays.map((later, index) => reading(at(later), later, false, index));
	expect(fitToneSum(80, sound)!.beyondSigmas).toBeLessThan(1);
	// Two equal sounds use the whole swing; a door slams in the loudest reading.
	const loudest = sound.reduce((best, each) => (each.levelDb > best.levelDb ? each : best));
	const slammed = sound.map(each => (each === loudest ? {...each, levelDb: each.levelDb + 8} : each));
	const found = fitToneSum(80, slammed)!;
	expect(found.beyondSigmas).toBeGreaterThan(3);
	expect(found.likeliestIndex).toBe(loudest.index);
});

test('the stated uncertainty is what noise makes of the level', () => {
	// 400 draws tell a standard deviation to 3.5 % (1/√(2n)); three of these, and the law is curved by 0.5 dB of noise.
	let state = 7;
	const random = () => {
		state = (state * 16807) % 2147483647;
		return state / 2147483647;
	};
	const normal = () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
	const at = (later: number) => both(72, 68, 0.4, 80, later, false);
	const values = Array.from({length: 400}, () => {
		const readings = [0, 12.5 / 3, 25 / 3].map(later => reading(at(later) + 0.5 * normal(), later));
		return sumLevel(fitToneSum(80, readings)!, 1, false).value;
	});
	const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
	const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
	const stated = sumLevel(
		fitToneSum(
			80,
			[0, 12.5 / 3, 25 / 3].map(later => reading(at(later), later)),
		)!,
		1,
		false,
	);
	expect(stated.sigma / spread).toBeGreaterThan(0.85);
	expect(stated.sigma / spread).toBeLessThan(1.15);
});
