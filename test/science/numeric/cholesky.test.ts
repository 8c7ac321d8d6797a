import fc from 'fast-check';
import {inverse, Matrix} from 'ml-matrix';
import {expect, test} from 'vitest';
import {factorCholesky, invertCholesky, solveCholesky} from '../../../source/science/numeric/cholesky.ts';

test('factorCholesky refuses a matrix that is singular, indefinite or not a number', () => {
	expect(factorCholesky(Float64Array.of(1, 0, 1, 1), 2)).toBe(false);
	expect(factorCholesky(Float64Array.of(1, 0, 2, 1), 2)).toBe(false);
	expect(factorCholesky(Float64Array.of(0), 1)).toBe(false);
	expect(factorCholesky(Float64Array.of(Number.NaN), 1)).toBe(false);
});

test('factorCholesky, solveCholesky and invertCholesky agree with the general routines of ml-matrix', () => {
	const size = fc.integer({min: 1, max: 12});
	fc.assert(
		fc.property(size, fc.infiniteStream(fc.double({min: -1, max: 1, noNaN: true})), (n, stream) => {
			const next = () => stream.next().value as number;
			const half = Matrix.zeros(n, n).apply(function fill(this: Matrix, row, column) {
				this.set(row, column, next());
			});
			const matrix = half.mmul(half.transpose()).add(Matrix.eye(n, n));
			const right = Array.from({length: n}, next);
			const factor = Float64Array.from(matrix.to1DArray());
			expect(factorCholesky(factor, n)).toBe(true);
			const solution = Float64Array.from(right);
			solveCholesky(factor, n, solution);
			const general = inverse(matrix);
			const expected = general.mmul(Matrix.columnVector(right)).to1DArray();
			const whole = invertCholesky(factor, n);
			for (const [index, value] of expected.entries()) expect(solution[index]).toBeCloseTo(value, 10);
			for (const [index, value] of general.to1DArray().entries()) expect(whole[index]).toBeCloseTo(value, 10);
		}),
		{seed: 5, numRuns: 60},
	);
});
