import {factorCholesky, invertCholesky, solveCholesky} from './cholesky.ts';
import {type Descent, type Linearisation, levenbergMarquardt, type Tolerances} from './levenbergMarquardt.ts';

/**
A problem whose residuals depend on a few parameters each, all in one unit.

`columns` names for each residual the parameters it depends on, `width` places a row, −1 where a place is free.
`evaluate` fills residuals (shape m) and derivatives (shape m × width, 0 at free places), divided by their sigmas.
*/
export type SparseProblem = {
	readonly unknowns: number;
	readonly width: number;
	readonly columns: Int32Array;
	readonly evaluate: (x: Float64Array, residuals: Float64Array, derivatives: Float64Array) => void;
	/**
	Weight of holding each parameter where it stands. It acts on the step and the covariance alone, never on the
	solution: what the residuals determine is left as it is, what they do not determine stays where it started.
	*/
	readonly rest: number;
};

export type SparseResult = Descent & {
	readonly residuals: Float64Array;
	/** Derivatives at the solution, shape m × width, divided by the sigmas. */
	readonly derivatives: Float64Array;
	/** (JᵀJ + rest·I)⁻¹, shape n × n; absent where that cannot be inverted. */
	readonly covariance?: Float64Array;
};

/** Adds JᵀJ to the lower triangle of `normal` and Jᵀr to `gradient`. */
function assemble(
	problem: SparseProblem,
	residuals: Float64Array,
	derivatives: Float64Array,
	normal: Float64Array,
	gradient: Float64Array,
) {
	const {columns, width, unknowns: n} = problem;
	for (let row = 0; row < residuals.length; row++) {
		const base = row * width;
		for (let a = 0; a < width; a++) {
			const column = columns[base + a]!;
			if (column < 0) continue;
			const left = derivatives[base + a]!;
			gradient[column]! += left * residuals[row]!;
			for (let b = 0; b < width; b++) {
				const other = columns[base + b]!;
				if (other >= 0 && other <= column) normal[column * n + other]! += left * derivatives[base + b]!;
			}
		}
	}
}

/**
Weighted nonlinear least squares for sparse rows: Levenberg-Marquardt on normal equations of typed arrays.

@param start - Shape (n).
@returns As `leastSquares`, with derivatives in sparse form and the covariance as one array of n × n.
@throws {RangeError} If the start has not one value for each unknown.
*/
export function sparseLeastSquares(
	problem: SparseProblem,
	start: Float64Array,
	tolerances: Tolerances = {},
): SparseResult {
	const {unknowns: n, width, columns, rest} = problem;
	if (start.length !== n) throw new RangeError(`start must hold ${n} values, got ${start.length}`);
	const count = columns.length / width;
	const residuals = new Float64Array(count);
	const derivatives = new Float64Array(count * width);
	const normal = new Float64Array(n * n);
	const gradient = new Float64Array(n);
	const factor = new Float64Array(n * n);
	let size = 0;
	let scale = 0;
	const linearisation: Linearisation = {
		evaluate(x) {
			problem.evaluate(x, residuals, derivatives);
			let sum = 0;
			for (const value of residuals) sum += value * value;
			size = Math.sqrt(sum);
			return sum / 2;
		},
		linearise() {
			normal.fill(0);
			gradient.fill(0);
			assemble(problem, residuals, derivatives, normal, gradient);
			// One scale for all keeps the damped step along the gradient where a direction is not determined.
			scale = 0;
			for (let k = 0; k < n; k++) scale += normal[k * n + k]! / n;
		},
		solve(damping, step) {
			factor.set(normal);
			for (let k = 0; k < n; k++) factor[k * n + k]! += damping * scale + rest;
			if (!factorCholesky(factor, n)) return false;
			for (let k = 0; k < n; k++) step[k] = -gradient[k]!;
			solveCholesky(factor, n, step);
			return true;
		},
		expectedGain(step) {
			// The normal matrix has only its lower triangle: each product off the diagonal counts twice.
			let linear = 0;
			let square = 0;
			for (let a = 0; a < n; a++) {
				linear += gradient[a]! * step[a]!;
				let sum = (normal[a * n + a]! * step[a]!) / 2;
				for (let b = 0; b < a; b++) sum += normal[a * n + b]! * step[b]!;
				square += sum * step[a]!;
			}

			return -linear - square;
		},
		obliqueness() {
			let largest = 0;
			for (let k = 0; k < n; k++) {
				const length = Math.sqrt(normal[k * n + k]!);
				if (length > 0) largest = Math.max(largest, Math.abs(gradient[k]!) / (length * size));
			}

			return largest;
		},
	};
	const descent = levenbergMarquardt(linearisation, start, tolerances);
	factor.set(normal);
	for (let k = 0; k < n; k++) factor[k * n + k]! += rest;
	const covariance = factorCholesky(factor, n) ? invertCholesky(factor, n) : undefined;
	return {...descent, residuals, derivatives, ...(covariance && {covariance})};
}
