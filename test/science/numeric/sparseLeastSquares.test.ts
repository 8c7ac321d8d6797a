import {expect, test} from 'vitest';
import {type SparseProblem, sparseLeastSquares} from '../../../source/science/numeric/sparseLeastSquares.ts';
import {leastSquares} from './leastSquaresOracle.ts';

// Four beacons in a plane, one point, all distances; each row depends on both unknowns.
const beacons = [
	[0, 0],
	[4, 0],
	[4, 3],
	[0, 3.2],
] as const;
const read = [2.236, 2.83, 3.606, 2.4];
const problem: SparseProblem = {
	unknowns: 2,
	width: 2,
	columns: Int32Array.from([0, 1, 0, 1, 0, 1, 0, 1]),
	rest: 0,
	evaluate(x, residuals, derivatives) {
		beacons.forEach(([bx, by], row) => {
			const distance = Math.hypot(x[0]! - bx, x[1]! - by);
			residuals[row] = (distance - read[row]!) / 0.01;
			derivatives[row * 2] = (x[0]! - bx) / distance / 0.01;
			derivatives[row * 2 + 1] = (x[1]! - by) / distance / 0.01;
		});
	},
};

test('sparseLeastSquares refuses a start of the wrong length', () => {
	expect(() => sparseLeastSquares(problem, Float64Array.of(1))).toThrow('start must hold 2 values, got 1');
});

test('sparseLeastSquares agrees with the dense solver in solution, cost and covariance', () => {
	const sparse = sparseLeastSquares(problem, Float64Array.of(1, 1));
	const dense = leastSquares(
		b => beacons.map(([bx, by], row) => (Math.hypot(b[0]! - bx, b[1]! - by) - read[row]!) / 0.01),
		[1, 1],
	);
	expect(sparse.solution[0]).toBeCloseTo(dense.solution[0]!, 7);
	expect(sparse.solution[1]).toBeCloseTo(dense.solution[1]!, 7);
	expect(sparse.cost / dense.cost).toBeCloseTo(1, 7);
	dense.covariance!.flat().forEach((value, index) => {
		expect(Math.abs(sparse.covariance![index]! - value)).toBeLessThan(1e-6 * 1e-4);
	});
});

test('sparseLeastSquares leaves an undetermined direction at its start and says how loose it is', () => {
	const oneDistance: SparseProblem = {
		unknowns: 2,
		width: 2,
		columns: Int32Array.from([0, 1]),
		rest: 1e-4,
		evaluate(x, residuals, derivatives) {
			const distance = Math.hypot(x[0]!, x[1]!);
			residuals[0] = (distance - 2) / 0.01;
			derivatives[0] = x[0]! / distance / 0.01;
			derivatives[1] = x[1]! / distance / 0.01;
		},
	};
	const {solution, covariance} = sparseLeastSquares(oneDistance, Float64Array.of(3, 4));
	expect(solution[0]).toBeCloseTo(1.2, 9);
	expect(solution[1]).toBeCloseTo(1.6, 9);
	// Across the line of sight only the rest weight acts: variance 1 / rest.
	const across = 0.64 * covariance![0]! + 0.36 * covariance![3]! - 0.96 * covariance![1]!;
	expect(across / 1e4).toBeCloseTo(1, 7);
});
