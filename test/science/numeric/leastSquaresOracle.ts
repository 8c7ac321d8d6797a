import {inverse, Matrix, QrDecomposition} from 'ml-matrix';
import {
	type Descent,
	type Linearisation,
	levenbergMarquardt,
	type Tolerances,
} from '../../../source/science/numeric/levenbergMarquardt.ts';

/** Residuals of shape (m) as a function of parameters of shape (n), already divided by their sigmas. */
export type Residuals = (x: Float64Array) => ArrayLike<number>;
/** Derivatives of the residuals: m rows of n numbers. */
export type JacobianOf = (x: Float64Array) => ReadonlyArray<ArrayLike<number>>;

export type LeastSquaresResult = Descent & {
	/** (JᵀJ)⁻¹ at the solution, n rows of n; absent where J has not full column rank. */
	readonly covariance?: readonly number[][];
	/** Residuals at the solution, shape (m). */
	readonly residuals: Float64Array;
	/** Sum of squares over degrees of freedom; NaN where m = n. Multiplies `covariance` where sigmas are not known. */
	readonly varianceFactor: number;
};

/** Central differences with a step of the cube root of the rounding unit. */
function differences(residuals: Residuals): JacobianOf {
	return x => {
		const columns = Array.from(x, (value, index) => {
			const step = Math.cbrt(2.2e-16) * Math.max(Math.abs(value), 1e-3);
			const moved = (by: number) => residuals(x.map((old, at) => (at === index ? old + by : old)));
			const above = moved(step);
			const below = moved(-step);
			return Array.from(above, (high, row) => (high - below[row]!) / (2 * step));
		});
		return columns[0]!.map((_, row) => columns.map(column => column[row]!));
	};
}

function denseProblem(residuals: Residuals, jacobian: JacobianOf, unknowns: number) {
	let at = new Float64Array(unknowns);
	let found = new Float64Array(0);
	let r = Matrix.zeros(0, 1);
	let j = Matrix.zeros(0, unknowns);
	let scale: number[] = new Array(unknowns).fill(0);
	const isFull = (qr: QrDecomposition) =>
		qr.upperTriangularMatrix.diagonal().every(value => Math.abs(value) > 0);
	const problem: Linearisation = {
		evaluate(x) {
			at = Float64Array.from(x);
			found = Float64Array.from(residuals(x));
			return found.reduce((sum, value) => sum + value * value, 0) / 2;
		},
		linearise() {
			r = Matrix.columnVector(found);
			j = new Matrix(jacobian(at).map(row => Array.from(row)));
			// Columns are weighed by the largest norm seen so far, as in Moré (1978), so that units do not matter.
			scale = scale.map((old, column) => Math.max(old, j.getColumnVector(column).norm()));
		},
		solve(damping, step) {
			const damped = Matrix.zeros(j.rows + unknowns, unknowns);
			damped.setSubMatrix(j, 0, 0);
			scale.forEach((size, column) => {
				damped.set(j.rows + column, column, Math.sqrt(damping) * (size || 1));
			});
			const qr = new QrDecomposition(damped);
			if (!isFull(qr)) return false;
			const right = Matrix.zeros(j.rows + unknowns, 1);
			right.setSubMatrix(Matrix.mul(r, -1), 0, 0);
			step.set(qr.solve(right).to1DArray());
			return step.every(Number.isFinite);
		},
		expectedGain(step) {
			const change = j.mmul(Matrix.columnVector(step));
			return -(r.dot(change) + change.dot(change) / 2);
		},
		obliqueness() {
			const size = r.norm();
			return Math.max(
				...scale.map((_, column) => {
					const vector = j.getColumnVector(column);
					const length = vector.norm();
					return length === 0 ? 0 : Math.abs(vector.dot(r)) / (length * size);
				}),
			);
		},
	};
	const covariance = () => {
		const sizes = scale.map((_, column) => j.getColumnVector(column).norm());
		if (j.rows < unknowns || sizes.some(size => size === 0)) return undefined;
		const qr = new QrDecomposition(j.clone().divRowVector(sizes));
		if (qr.upperTriangularMatrix.diagonal().some(value => Math.abs(value) < 1e-13)) return undefined;
		const half = inverse(qr.upperTriangularMatrix);
		return half
			.mmul(half.transpose())
			.to2DArray()
			.map((row, a) => row.map((value, b) => value / (sizes[a]! * sizes[b]!)));
	};

	return {problem, covariance, residuals: () => found};
}

/**
Weighted nonlinear least squares for dense problems: Levenberg-Marquardt with a QR factorisation in each step,
which keeps twice as many digits as normal equations do.

@param residuals - Shape (m) from parameters of shape (n), each divided by its sigma; m ≥ n.
@param start - Shape (n), finite.
@param options - Tolerances, and the Jacobian (m rows of n); central differences where it is not given.
@returns Solution, covariance (JᵀJ)⁻¹, half the sum of squares, iterations and how it ended.
@throws {RangeError} If the start is empty or not finite, or there are fewer residuals than parameters.
@see Moré, The Levenberg-Marquardt algorithm: implementation and theory, Lecture Notes in Mathematics 630 (1978).
*/
export function leastSquares(
	residuals: Residuals,
	start: ArrayLike<number>,
	options: Tolerances & {readonly jacobian?: JacobianOf} = {},
): LeastSquaresResult {
	const first = Float64Array.from(start);
	if (first.length === 0) throw new RangeError('start must hold at least one parameter, got none');
	const bad = first.findIndex(value => !Number.isFinite(value));
	if (bad >= 0) throw new RangeError(`start[${bad}] must be finite, got ${first[bad]}`);
	const count = residuals(first).length;
	if (count < first.length) {
		throw new RangeError(`residuals must be at least as many as parameters (${first.length}), got ${count}`);
	}

	const dense = denseProblem(residuals, options.jacobian ?? differences(residuals), first.length);
	const descent = levenbergMarquardt(dense.problem, first, options);
	const covariance = Number.isFinite(descent.cost) ? dense.covariance() : undefined;
	return {
		...descent,
		...(covariance && {covariance}),
		residuals: dense.residuals(),
		varianceFactor: (2 * descent.cost) / (count - first.length),
	};
}
