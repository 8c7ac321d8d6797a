/**
Cholesky factor of a symmetric positive definite matrix, in place.

Rows lie one after the other (shape n × n in one array); only the lower triangle is read and written. For the
hundred unknowns of a room this typed-array loop takes a third of the time of a general matrix class.

@returns False where the matrix is not positive definite to working precision; the array is then spoilt.
@see Golub and Van Loan, Matrix Computations, 4th ed., algorithm 4.2.1.
*/
export function factorCholesky(matrix: Float64Array, n: number): boolean {
	for (let row = 0; row < n; row++) {
		const base = row * n;
		for (let column = 0; column < row; column++) {
			const other = column * n;
			let sum = matrix[base + column]!;
			for (let k = 0; k < column; k++) sum -= matrix[base + k]! * matrix[other + k]!;
			matrix[base + column] = sum / matrix[other + column]!;
		}

		const whole = matrix[base + row]!;
		let pivot = whole;
		for (let k = 0; k < row; k++) pivot -= matrix[base + k]! * matrix[base + k]!;
		if (!(pivot > whole * 1e-15)) return false;
		matrix[base + row] = Math.sqrt(pivot);
	}

	return true;
}

/** Solves L·Lᵀ·x = b in place of `vector`, with the factor of `factorCholesky`. */
export function solveCholesky(factor: Float64Array, n: number, vector: Float64Array): void {
	for (let row = 0; row < n; row++) {
		let sum = vector[row]!;
		for (let k = 0; k < row; k++) sum -= factor[row * n + k]! * vector[k]!;
		vector[row] = sum / factor[row * n + row]!;
	}

	for (let row = n - 1; row >= 0; row--) {
		const value = vector[row]! / factor[row * n + row]!;
		vector[row] = value;
		for (let k = 0; k < row; k++) vector[k]! -= factor[row * n + k]! * value;
	}
}

/** (L·Lᵀ)⁻¹ as a full symmetric n × n array, from the factor of `factorCholesky`. */
export function invertCholesky(factor: Float64Array, n: number): Float64Array {
	// Rows of `half` are columns of L⁻¹, so that every inner loop runs along memory.
	const half = new Float64Array(n * n);
	for (let column = 0; column < n; column++) {
		const base = column * n;
		half[base + column] = 1 / factor[column * n + column]!;
		for (let row = column + 1; row < n; row++) {
			let sum = 0;
			for (let k = column; k < row; k++) sum -= factor[row * n + k]! * half[base + k]!;
			half[base + row] = sum / factor[row * n + row]!;
		}
	}

	const whole = new Float64Array(n * n);
	for (let a = 0; a < n; a++) {
		for (let b = 0; b <= a; b++) {
			let sum = 0;
			for (let k = a; k < n; k++) sum += half[a * n + k]! * half[b * n + k]!;
			whole[a * n + b] = sum;
			whole[b * n + a] = sum;
		}
	}

	return whole;
}
