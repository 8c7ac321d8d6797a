import {reflectBack, type Tridiagonal, tridiagonalOf} from './tridiagonal.ts';

export type LowestEigen = {
	/** In rising order. */
	readonly values: readonly number[];
	/** One vector of unit length for each value. */
	readonly vectors: readonly Float64Array[];
};

/** Vectors whose values lie nearer than this share of the largest wanted are kept at right angles by force. */
const nearShare = 1e-2;
/** Solutions of one inverse iteration; the first already has all digits but for unlucky starts. */
const iterations = 3;
/** Values found between two answers. */
const chunk = 4;

/**
Eigenvalues of a symmetric matrix up to a bound, with their vectors: tridiagonal form, bisection, inverse iteration. Where
a fraction is wanted that costs a fraction of the full decomposition, and as a generator it yields every few milliseconds.

@param matrix - n × n by rows, symmetric; overwritten.
@param largest - Largest eigenvalue wanted.
@see Golub and Van Loan, Matrix Computations, 4th ed. (2013), sections 8.4.1 (bisection) and 8.4.2 (inverse iteration).
*/
export function* lowestEigen(
	matrix: Float64Array,
	size: number,
	largest: number,
): Generator<void, LowestEigen> {
	const form = yield* tridiagonalOf(matrix, size);
	const values: number[] = [];
	const vectors: Float64Array[] = [];
	let norm = 0;
	for (let i = 0; i < size; i++)
		norm = Math.max(
			norm,
			Math.abs(form.diagonal[i]!) + Math.abs(form.beside[i]!) + Math.abs(form.beside[i - 1] ?? 0),
		);
	const count = countBelow(form, largest, norm);
	let from = -norm;
	for (let n = 0; n < count; n++) {
		from = nthValue(form, n, from, largest, norm);
		values.push(from);
		const near: Float64Array[] = [];
		for (let m = n - 1; m >= 0 && values[n]! - values[m]! < nearShare * largest; m--) near.push(vectors[m]!);
		vectors.push(vectorOf(form, from, near, norm, n));
		if (n % chunk === chunk - 1) yield;
	}

	for (const [n, vector] of vectors.entries()) {
		reflectBack(form, vector);
		if (n % (2 * chunk) === 0) yield;
	}

	return {values, vectors};
}

/** A pivot stands for nothing below this; of a matrix of zeros too its reciprocal is a number. */
const leastPivot = (norm: number) => Math.max(Number.EPSILON * norm, 1e-150);

/** How many eigenvalues lie below a bound: the signs of Sturm's sequence. */
function countBelow({size, diagonal, beside}: Tridiagonal, bound: number, norm: number): number {
	const tiny = leastPivot(norm);
	let count = 0;
	let pivot = 1;
	for (let i = 0; i < size; i++) {
		const side = i === 0 ? 0 : beside[i - 1]!;
		pivot = diagonal[i]! - bound - (side * side) / pivot;
		if (Math.abs(pivot) < tiny) pivot = -tiny;
		if (pivot < 0) count++;
	}

	return count;
}

function nthValue(form: Tridiagonal, n: number, from: number, to: number, norm: number): number {
	const exact = 2 * Number.EPSILON * norm;
	let [low, high] = [from, to];
	while (high - low > exact) {
		const middle = (low + high) / 2;
		if (middle <= low || middle >= high) break;
		if (countBelow(form, middle, norm) > n) high = middle;
		else low = middle;
	}

	return (low + high) / 2;
}

/** The vector of one value, at right angles to those of its neighbours. */
function vectorOf(
	form: Tridiagonal,
	value: number,
	near: readonly Float64Array[],
	norm: number,
	seed: number,
): Float64Array {
	const {size} = form;
	// Any start will do that has a part along every vector; this one is never the same twice.
	const vector = Float64Array.from(
		{length: size},
		(_, i) => 1 + 0.5 * Math.sin(12.9898 * (i + 1) + 4.1414 * seed),
	);
	const solve = shiftedSolver(form, value, norm);
	for (let round = 0; round < iterations; round++) {
		if (round > 0) solve(vector);
		for (const other of near) {
			let along = 0;
			for (let i = 0; i < size; i++) along += other[i]! * vector[i]!;
			for (let i = 0; i < size; i++) vector[i]! -= along * other[i]!;
		}

		let largest = 0;
		for (let i = 0; i < size; i++) largest = Math.max(largest, Math.abs(vector[i]!));
		let square = 0;
		for (let i = 0; i < size; i++) square += (vector[i]! / largest) ** 2;
		const scale = 1 / (largest * Math.sqrt(square));
		for (let i = 0; i < size; i++) vector[i]! *= scale;
	}

	return vector;
}

/** Solves (T − value)·x = b in place, by elimination with interchange of neighbouring rows. */
function shiftedSolver(
	{size, diagonal, beside}: Tridiagonal,
	value: number,
	norm: number,
): (b: Float64Array) => void {
	const pivots = Float64Array.from(diagonal, one => one - value);
	const upper = Float64Array.from(beside);
	const second = new Float64Array(size);
	const factors = new Float64Array(size);
	const isSwapped = new Uint8Array(size);
	const tiny = leastPivot(norm);
	for (let i = 0; i + 1 < size; i++) {
		const below = beside[i]!;
		if (Math.abs(below) > Math.abs(pivots[i]!)) {
			isSwapped[i] = 1;
			factors[i] = pivots[i]! / below;
			const [own, next] = [upper[i]!, pivots[i + 1]!];
			pivots[i] = below;
			upper[i] = next;
			second[i] = upper[i + 1]!;
			pivots[i + 1] = own - factors[i]! * next;
			upper[i + 1] = -factors[i]! * second[i]!;
		} else {
			if (Math.abs(pivots[i]!) < tiny) pivots[i] = tiny;
			factors[i] = below / pivots[i]!;
			pivots[i + 1]! -= factors[i]! * upper[i]!;
		}
	}

	if (Math.abs(pivots[size - 1]!) < tiny) pivots[size - 1] = tiny;
	return b => {
		for (let i = 0; i + 1 < size; i++) {
			if (isSwapped[i] === 1) {
				const own = b[i]!;
				b[i] = b[i + 1]!;
				b[i + 1] = own - factors[i]! * b[i]!;
			} else b[i + 1]! -= factors[i]! * b[i]!;
		}

		for (let i = size - 1; i >= 0; i--)
			b[i] =
				(b[i]! - (i + 1 < size ? upper[i]! * b[i + 1]! : 0) - (i + 2 < size ? second[i]! * b[i + 2]! : 0)) /
				pivots[i]!;
	};
}
