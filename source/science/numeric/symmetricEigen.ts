import {EigenvalueDecomposition, Matrix} from 'ml-matrix';

export type Eigen = {
	/** In rising order. */
	readonly values: readonly number[];
	/** One vector of unit length for each value. */
	readonly vectors: readonly number[][];
};

/**
Eigenvalues and eigenvectors of a symmetric matrix.

@param rows - Shape n × n, symmetric.
*/
export function symmetricEigen(rows: readonly (readonly number[])[]): Eigen {
	const matrix = new Matrix(rows.map(row => [...row]));
	const found = new EigenvalueDecomposition(matrix, {assumeSymmetric: true});
	const order = found.realEigenvalues
		.map((value, index) => ({value, index}))
		.sort((a, b) => a.value - b.value);
	return {
		values: order.map(({value}) => value),
		vectors: order.map(({index}) => found.eigenvectorMatrix.getColumn(index)),
	};
}
