import {expect, test} from 'vitest';
import {symmetricEigen} from '../../../source/science/numeric/symmetricEigen.ts';

test('symmetricEigen returns the one value of a one by one matrix', () => {
	expect(symmetricEigen([[4]])).toEqual({values: [4], vectors: [[1]]});
});

test('symmetricEigen orders values upwards and keeps vectors beside them', () => {
	// Closed form: [[2, 1], [1, 2]] has 1 along (1, −1) and 3 along (1, 1).
	const {values, vectors} = symmetricEigen([
		[2, 1],
		[1, 2],
	]);
	expect(values[0]).toBeCloseTo(1, 14);
	expect(values[1]).toBeCloseTo(3, 14);
	expect(vectors[0]![0]! + vectors[0]![1]!).toBeCloseTo(0, 14);
	expect(vectors[1]![0]! - vectors[1]![1]!).toBeCloseTo(0, 14);
});
