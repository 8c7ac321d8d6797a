import {expect, test} from 'vitest';
import {type SparseProblem, sparseLeastSquares} from '../../../source/science/numeric/sparseLeastSquares.ts';
import {problemOf} from '../../../source/study/survey/equations.ts';
import type {Observation} from '../../../source/study/survey/observations.ts';
import {testsOf} from '../../../source/study/survey/reliability.ts';
import {joinRepeats} from '../../../source/study/survey/repeats.ts';

type Points = Readonly<Record<string, readonly number[]>>;

/** Adjusts some coordinates of a survey, the others held, equal weights. `free` names point and axis. */
function survey(
	points: Points,
	read: ReadonlyArray<readonly [string, string, number]>,
	free: ReadonlyArray<readonly [string, number]>,
	sigmaMetres = 0.001,
) {
	const names = Object.keys(points);
	const state = Float64Array.from([...names.flatMap(name => [...points[name]!, 0, 0].slice(0, 3)), 0, 0, 0]);
	const observations = read.map(
		([a, b, metres], reading): Observation => ({
			kind: 'points',
			reading,
			metres,
			sigmaMetres,
			from: names.indexOf(a) * 3,
			to: names.indexOf(b) * 3,
		}),
	);
	const offsets = free.map(([name, axis]) => names.indexOf(name) * 3 + axis);
	const problem: SparseProblem = problemOf(observations, [], state, offsets);
	const found = sparseLeastSquares(
		problem,
		Float64Array.from(offsets, offset => state[offset]!),
	);
	const rows = {
		columns: problem.columns,
		derivatives: found.derivatives,
		residuals: found.residuals,
		covariance: found.covariance!,
		unknowns: offsets.length,
	};
	const tests = testsOf(rows, joinRepeats(observations)).flat();
	const redundancy = tests.map(one => one.redundancy);
	const surplus = redundancy.reduce((sum, r) => sum + r, 0);
	const sigma0 = Math.sqrt((2 * found.cost) / surplus);
	return {
		solution: found.solution,
		residuals: found.residuals.map(v => v * sigmaMetres),
		redundancy,
		standardised: tests.map(one => one.standardised),
		surplus,
		sigma0: sigma0 * sigmaMetres,
		deviations: offsets.map((_, k) => Math.sqrt(found.covariance![k * offsets.length + k]!) * sigma0),
	};
}

const expectAll = (actual: ArrayLike<number>, expected: readonly number[], tolerance: number) => {
	expect(actual.length).toBe(expected.length);
	for (const [index, value] of expected.entries())
		expect(Math.abs(actual[index]! - value)).toBeLessThanOrEqual(tolerance);
};

// Mikhail and Ackermann, Observations and Least Squares (1976), example 9.1, pp. 219-221: data as a course's published code gives them; the book and its
// printed results were not at hand, the figures are an independent recomputation to the digits shown.
test('a plane point from three distances comes out as the textbook example recomputed', () => {
	const points = {P: [0, 5], O: [0, 0], Q: [5, 0], R: [5, 5]};
	const found = survey(
		points,
		[
			['R', 'P', 5.1],
			['R', 'O', 7.07],
			['R', 'Q', 4.9],
		],
		[
			['R', 0],
			['R', 1],
		],
	);
	expectAll(found.solution, [5.0986149, 4.89863], 6e-8);
	expectAll(found.residuals, [-0.0003775, 0.0005339, -0.0003775], 6e-8);
	expect(found.sigma0).toBeCloseTo(0.00075502, 8);
	expectAll(found.deviations, [0.0006495, 0.0006583], 6e-8);
	expectAll(found.redundancy, [0.2499676, 0.5000623, 0.2499701], 6e-8);
});

test('the same example with y held at 5 leaves one unknown and two surplus readings', () => {
	const points = {P: [0, 5], O: [0, 0], Q: [5, 0], R: [5, 5]};
	const found = survey(
		points,
		[
			['R', 'P', 5.1],
			['R', 'O', 7.07],
			['R', 'Q', 4.9],
		],
		[['R', 0]],
	);
	expectAll(found.solution, [5.0650784], 6e-8);
	expectAll(found.residuals, [-0.0349216, 0.0472339, 0.1004235], 6e-8);
	expect(found.sigma0).toBeCloseTo(0.0822662, 7);
	expect(found.surplus).toBeCloseTo(2, 9);
});

// Ghilani and Wolf, Adjustment Computations, trilateration chapter, example 14.1: data from memory (the distances close
// to 0.1 in 5000, which supports them); solution recomputed independently. Lengths are feet there.
test('the trilateration of Ghilani and Wolf comes out as recomputed', () => {
	const points = {A: [865.4, 4527.15], B: [2432.55, 2047.25], C: [2865.22, 27.15], U: [6861.35, 3727.59]};
	const found = survey(
		points,
		[
			['A', 'U', 6049],
			['B', 'U', 4736.83],
			['C', 'U', 5446.49],
		],
		[
			['U', 0],
			['U', 1],
		],
	);
	expectAll(found.solution, [6861.3168, 3727.8186], 6e-5);
	expectAll(found.residuals, [-0.03737, 0.07679, -0.04737], 6e-6);
	expect(Math.abs(found.sigma0 - 0.09766)).toBeLessThan(6e-6);
	expectAll(found.deviations, [0.07753, 0.15425], 6e-6);
	expectAll(found.redundancy, [0.146447, 0.618321, 0.235233], 6e-7);
});

// Norrdine, An algebraic solution to the multilateration problem, IPIN 2012: points, ranges and corrections from the
// author's published script; solution recomputed independently.
test('a point inside a hall from six ranges comes out as recomputed, with its weak height', () => {
	const points = {
		P37: [27.297, -4.953, 1.47],
		P31: [20.693, -4.849, 1.93],
		P102: [22.59, 0.524, 1.2],
		P43: [17.113, -3.003, 2.17],
		P208: [22.554, 4.727, 1.77],
		P101: [22.447, -7.88, 1.6],
		N: [26.759, -1.342, 1.13],
	};
	const ranges = [
		['P37', 3.652],
		['P31', 7.036],
		['P102', 4.586],
		['P43', 9.84],
		['P208', 7.402],
		['P101', 7.883],
	] as const;
	const found = survey(
		points,
		ranges.map(([name, metres]) => ['N', name, metres] as const),
		[
			['N', 0],
			['N', 1],
			['N', 2],
		],
	);
	expectAll(found.solution, [26.78401, -1.3287, 1.45256], 6e-6);
	expectAll(found.residuals, [0.00847, 0.0153, 0.00595, 0.00106, -0.00841, -0.02482], 6e-6);
	expect(Math.abs(found.sigma0 - 0.018522)).toBeLessThan(6e-7);
	expectAll(found.deviations, [0.01222, 0.01159, 0.18388], 6e-6);
	expectAll(found.redundancy, [0.63248, 0.6066, 0.04544, 0.56842, 0.50812, 0.63893], 6e-6);
});

// Exact: 6 distances, 5 degrees of freedom of a plane figure, symmetry shares the one surplus 4 × 1/8 + 2 × 1/4.
test('a free square with both diagonals has redundancy 1/8 a side and 1/4 a diagonal', () => {
	const points = {A: [0, 0], B: [1, 0], C: [1, 1], D: [0, 1]};
	const sides = [
		['A', 'B', 1],
		['B', 'C', 1],
		['C', 'D', 1],
		['D', 'A', 1],
		['A', 'C', Math.SQRT2],
		['B', 'D', Math.SQRT2],
	] as const;
	const free = ['A', 'B', 'C', 'D'].flatMap(
		name =>
			[
				[name, 0],
				[name, 1],
			] as const,
	);
	const found = survey(points, sides, free, 0.003);
	expectAll(found.redundancy, [0.125, 0.125, 0.125, 0.125, 0.25, 0.25], 1e-7);
});

// Made up for this test: 6 × 4 m with millimetre errors; solution computed independently with numpy.
test('a room quadrilateral with one surplus reading cannot tell which reading is off', () => {
	const points = {A: [0, 0], B: [6, 0], C: [6, 4], D: [0, 4]};
	const read = [
		['A', 'B', 6.004],
		['B', 'C', 3.998],
		['C', 'D', 6.001],
		['A', 'D', 4.003],
		['A', 'C', 7.2081],
		['B', 'D', 7.2141],
	] as const;
	const free = [
		['B', 0],
		['C', 0],
		['C', 1],
		['D', 0],
		['D', 1],
	] as const;
	const found = survey(points, read, free, 0.002);
	expectAll(found.solution, [6.0030188, 5.9995786, 3.997344, -0.0004376, 4.0023463], 6e-8);
	expectAll(found.redundancy, [0.1730212, 0.0769883, 0.1731948, 0.0767958, 0.2497918, 0.2502081], 6e-8);
	expect(Math.abs(found.sigma0 - 0.0023589)).toBeLessThan(6e-8);
	for (const w of found.standardised) expect(Math.abs(Math.abs(w) - 1.17944)).toBeLessThan(6e-6);
});

// Closed form of three spheres at (0, 0, 0), (d, 0, 0), (i, j, 0): x = (r₁² − r₂² + d²)/2d,
// y = (r₁² − r₃² + i² + j² − 2ix)/2j, z = √(r₁² − x² − y²). No redundancy: the solver must meet it to rounding.
test('a point from three distances in space meets the closed form of three spheres', () => {
	const [d, i, j] = [3.2, 1.1, 2.7];
	const [r1, r2, r3] = [2.31, 2.48, 2.05];
	const x = (r1 ** 2 - r2 ** 2 + d ** 2) / (2 * d);
	const y = (r1 ** 2 - r3 ** 2 + i ** 2 + j ** 2 - 2 * i * x) / (2 * j);
	const z = Math.sqrt(r1 ** 2 - x ** 2 - y ** 2);
	const points = {A: [0, 0, 0], B: [d, 0, 0], C: [i, j, 0], P: [1, 1, 1]};
	const found = survey(
		points,
		[
			['P', 'A', r1],
			['P', 'B', r2],
			['P', 'C', r3],
		],
		[
			['P', 0],
			['P', 1],
			['P', 2],
		],
	);
	expectAll(found.solution, [x, y, z], 1e-9);
	expectAll(found.redundancy, [0, 0, 0], 1e-7);
});
