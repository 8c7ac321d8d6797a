/**
A symmetric matrix brought to tridiagonal form by reflections, T = QᵀAQ: its diagonal, what stands beside it, and the
reflections, one a row of n numbers, each with its factor.
*/
export type Tridiagonal = {
	readonly size: number;
	readonly diagonal: Float64Array;
	/** Element i couples i and i + 1; the last is 0. */
	readonly beside: Float64Array;
	readonly reflections: Float64Array;
	readonly factors: Float64Array;
};

/** Products between two answers: some milliseconds. */
const chunk = 1_000_000;

/**
Householder's reduction of a symmetric matrix. A generator, since it takes n³ products: it yields every few milliseconds.

@param matrix - n × n by rows; only its lower triangle is read, and it is overwritten.
@see Golub and Van Loan, Matrix Computations, 4th ed. (2013), algorithm 8.3.1.
*/
export function* tridiagonalOf(matrix: Float64Array, size: number): Generator<void, Tridiagonal> {
	const diagonal = new Float64Array(size);
	const beside = new Float64Array(size);
	const reflections = new Float64Array(size * size);
	const factors = new Float64Array(size);
	const product = new Float64Array(size);
	let work = 0;
	for (let k = 0; k < size - 1; k++) {
		diagonal[k] = matrix[k * size + k]!;
		const v = reflections.subarray(k * size, (k + 1) * size);
		let square = 0;
		for (let i = k + 1; i < size; i++) {
			const value = matrix[i * size + k]!;
			v[i] = value;
			square += value * value;
		}

		const first = v[k + 1]!;
		// Already in form: nothing to reflect.
		if (square - first * first <= 1e-32 * first * first) {
			beside[k] = first;
			continue;
		}

		const length = first > 0 ? -Math.sqrt(square) : Math.sqrt(square);
		beside[k] = length;
		v[k + 1] = first - length;
		const factor = 1 / (square - first * length);
		factors[k] = factor;
		reflect(matrix, size, k + 1, v, factor, product);
		work += 2 * (size - k) ** 2;
		if (work > chunk) {
			work = 0;
			yield;
		}
	}

	diagonal[size - 1] = matrix[size * size - 1]!;
	return {size, diagonal, beside, reflections, factors};
}

/** A ← (I − f·v·vᵀ)·A·(I − f·v·vᵀ) on the lower triangle from a row and column on. */
function reflect(
	matrix: Float64Array,
	size: number,
	from: number,
	v: Float64Array,
	factor: number,
	product: Float64Array,
): void {
	product.fill(0, from);
	for (let i = from; i < size; i++) {
		const row = i * size;
		const own = v[i]!;
		let sum = matrix[row + i]! * own;
		for (let j = from; j < i; j++) {
			const value = matrix[row + j]!;
			sum += value * v[j]!;
			product[j]! += value * own;
		}

		product[i]! += sum;
	}

	let along = 0;
	for (let i = from; i < size; i++) {
		product[i]! *= factor;
		along += product[i]! * v[i]!;
	}

	const half = (factor * along) / 2;
	for (let i = from; i < size; i++) product[i]! -= half * v[i]!;
	for (let i = from; i < size; i++) {
		const row = i * size;
		const [own, other] = [v[i]!, product[i]!];
		for (let j = from; j <= i; j++) matrix[row + j]! -= own * product[j]! + other * v[j]!;
	}
}

/** Takes a vector of the tridiagonal form back to the matrix it came from, in place. */
export function reflectBack({size, reflections, factors}: Tridiagonal, vector: Float64Array): void {
	for (let k = size - 2; k >= 0; k--) {
		const factor = factors[k]!;
		if (factor === 0) continue;
		const row = k * size;
		let sum = 0;
		for (let i = k + 1; i < size; i++) sum += reflections[row + i]! * vector[i]!;
		sum *= factor;
		for (let i = k + 1; i < size; i++) vector[i]! -= sum * reflections[row + i]!;
	}
}
