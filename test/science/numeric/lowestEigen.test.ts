import fc from 'fast-check';
import {expect, test} from 'vitest';
import {finished} from '../../../source/science/numeric/finished.ts';
import {type LowestEigen, lowestEigen} from '../../../source/science/numeric/lowestEigen.ts';
import {symmetricEigen} from '../../../source/science/numeric/symmetricEigen.ts';

const flat = (rows: readonly (readonly number[])[]) => Float64Array.from(rows.flat());

/** Largest |A·x − λ·x| over the vectors, and largest product of two different ones or error of a length. */
function faults(
	rows: readonly (readonly number[])[],
	{values, vectors}: LowestEigen,
): {residual: number; crossed: number} {
	let residual = 0;
	let crossed = 0;
	for (const [n, vector] of vectors.entries()) {
		for (const [i, row] of rows.entries()) {
			const product = row.reduce((sum, value, j) => sum + value * vector[j]!, 0);
			residual = Math.max(residual, Math.abs(product - values[n]! * vector[i]!));
		}

		for (const [m, other] of vectors.entries()) {
			const product = vector.reduce((sum, value, i) => sum + value * other[i]!, 0);
			crossed = Math.max(crossed, Math.abs(product - Number(m === n)));
		}
	}

	return {residual, crossed};
}

// Closed form: −1, 2, −1 along a line of n points has 2 − 2·cos(kπ/(n + 1)).
test('a chain of springs has the eigenvalues of its closed form, up to the bound and no further', () => {
	const size = 30;
	const rows = Array.from({length: size}, (_, i) =>
		Array.from({length: size}, (__, j) => (i === j ? 2 : Math.abs(i - j) === 1 ? -1 : 0)),
	);
	const found = finished(lowestEigen(flat(rows), size, 2));
	expect(found.values).toHaveLength(15);
	for (const [k, value] of found.values.entries())
		expect(value).toBeCloseTo(2 - 2 * Math.cos(((k + 1) * Math.PI) / (size + 1)), 12);
	const {residual, crossed} = faults(rows, found);
	expect(residual).toBeLessThan(1e-12);
	expect(crossed).toBeLessThan(1e-12);
});

test('values that fall together have vectors at right angles', () => {
	// Two equal blocks and a unit matrix: every value at least twice.
	const rows = [
		[2, 1, 0, 0, 0, 0],
		[1, 2, 0, 0, 0, 0],
		[0, 0, 2, 1, 0, 0],
		[0, 0, 1, 2, 0, 0],
		[0, 0, 0, 0, 1, 0],
		[0, 0, 0, 0, 0, 1],
	];
	const found = finished(lowestEigen(flat(rows), 6, 10));
	for (const [n, value] of [1, 1, 1, 1, 3, 3].entries()) expect(found.values[n]).toBeCloseTo(value, 12);
	const {residual, crossed} = faults(rows, found);
	expect(residual).toBeLessThan(1e-12);
	expect(crossed).toBeLessThan(1e-12);
});

test.each([1, 2, 5])('a matrix of %i × zeros has zeros and vectors at right angles', size => {
	const rows = Array.from({length: size}, () => new Array<number>(size).fill(0));
	const found = finished(lowestEigen(flat(rows), size, 1e3));
	expect(found.values.map(Math.abs)).toEqual(new Array(size).fill(0));
	const {residual, crossed} = faults(rows, found);
	expect(residual).toBe(0);
	expect(crossed).toBeLessThan(1e-12);
});

// The library's full decomposition is the reference; the bound lies in the middle of a gap of its values.
test('any symmetric matrix has the values of the full decomposition, and vectors that fit', () => {
	fc.assert(
		fc.property(
			fc.integer({min: 1, max: 9}).chain(size =>
				fc.array(
					fc.integer({min: -1000, max: 1000}).map(value => value / 100),
					{minLength: size * size, maxLength: size * size},
				),
			),
			entries => {
				const size = Math.sqrt(entries.length);
				const rows = Array.from({length: size}, (_, i) =>
					Array.from({length: size}, (__, j) => entries[i * size + j]! + entries[j * size + i]!),
				);
				const {values} = symmetricEigen(rows);
				const found = finished(lowestEigen(flat(rows), size, 1e3));
				expect(found.values).toHaveLength(size);
				// Largest entries are 20: rounding of sums of nine.
				for (const [n, value] of found.values.entries())
					expect(Math.abs(value - values[n]!)).toBeLessThan(1e-9);
				const {residual, crossed} = faults(rows, found);
				expect(residual).toBeLessThan(1e-9);
				expect(crossed).toBeLessThan(1e-9);
			},
		),
	);
});
