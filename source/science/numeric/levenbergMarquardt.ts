/** How an iterative solver ended, by number. */
export const leastSquaresMessages = {
	0: 'The limit of iterations was reached before the solution settled.',
	1: 'The residuals are orthogonal to every column of the Jacobian.',
	2: 'The step has become smaller than the step tolerance.',
	3: 'The sum of squares no longer changes.',
	4: 'No step, however short, lowers the sum of squares; the start may not be finite.',
} as const;

export type LeastSquaresStatus = keyof typeof leastSquaresMessages;

/** What the damped iteration needs of a problem, whether it is dense or sparse. */
export type Linearisation = {
	/** Residuals (and derivatives) at `x`; returns half their sum of squares, NaN or Infinity where undefined. */
	readonly evaluate: (x: Float64Array) => number;
	/** Takes what `evaluate` found last as the place to step from. */
	readonly linearise: () => void;
	/** Solves (JᵀJ + damping·D)·step = −Jᵀr; false where that has no solution. */
	readonly solve: (damping: number, step: Float64Array) => boolean;
	/** Lowering of the cost that the linear model expects of `step`. */
	readonly expectedGain: (step: Float64Array) => number;
	/** Largest cosine between the residuals and a column of the Jacobian. */
	readonly obliqueness: () => number;
};

export type Tolerances = {
	/** Cosine between residuals and columns below which the gradient counts as zero. */
	readonly gradient?: number;
	/** Step relative to the solution, both as Euclidean norms. */
	readonly step?: number;
	/** Change of the cost relative to the cost. */
	readonly cost?: number;
	readonly iterations?: number;
	/** First damping relative to D. */
	readonly damping?: number;
};

export type Descent = {
	readonly solution: Float64Array;
	/** Half the sum of squared residuals. */
	readonly cost: number;
	readonly iterations: number;
	readonly status: LeastSquaresStatus;
};

const norm = (vector: Float64Array) => Math.sqrt(vector.reduce((sum, value) => sum + value * value, 0));

/**
Levenberg-Marquardt iteration: damped Gauss-Newton steps, the damping led by the ratio of the gain found to
the gain expected.

Not settling is a result (`status` 0 or 4), never an exception. After the call the problem stands evaluated and
linearised at the solution.

@param start - Shape (n); not changed.
@see Marquardt, J. SIAM 11 (1963) 431; damping rule of Nielsen, IMM-REP-1999-05 (equation not looked up; Madsen, Nielsen and
Tingleff, Methods for Non-Linear Least Squares Problems, 2004).
*/
export function levenbergMarquardt(
	problem: Linearisation,
	start: Float64Array,
	tolerances: Tolerances = {},
): Descent {
	const {gradient = 1e-12, step: shortest = 1e-12, cost: flat = 1e-15, iterations: limit = 200} = tolerances;
	let solution = Float64Array.from(start);
	let cost = problem.evaluate(solution);
	if (!Number.isFinite(cost)) return {solution, cost, iterations: 0, status: 4};
	problem.linearise();
	const step = new Float64Array(start.length);
	let damping = tolerances.damping ?? 1e-3;
	let growth = 2;
	let iterations = 0;
	let status: LeastSquaresStatus = 0;
	const startsAtSolution = cost === 0 || problem.obliqueness() <= gradient;
	if (startsAtSolution) status = 1;
	while (!startsAtSolution && iterations < limit) {
		iterations++;
		if (!problem.solve(damping, step)) {
			damping *= growth;
			growth *= 2;
			if (damping > 1e30) {
				status = 4;
				break;
			}

			continue;
		}

		const size = norm(step);
		const isShort = size <= shortest * (norm(solution) + shortest);
		const expected = problem.expectedGain(step);
		const trial = solution.map((value, index) => value + step[index]!);
		const trialCost = problem.evaluate(trial);
		const gain = cost - trialCost;
		if (Number.isFinite(trialCost) && gain >= 0) {
			solution = trial;
			cost = trialCost;
			problem.linearise();
			damping *= Math.max(1 / 3, 1 - (2 * (gain / expected) - 1) ** 3) || 1;
			growth = 2;
			if (cost === 0 || problem.obliqueness() <= gradient) status = 1;
			else if (isShort) status = 2;
			else if (gain <= flat * cost && expected <= flat * cost) status = 3;
			if (status !== 0) break;
		} else {
			// Rounding alone makes a step of this size look bad: there is nothing left to gain.
			if (isShort) {
				status = 2;
				break;
			}

			if (expected <= flat * cost) {
				status = 3;
				break;
			}

			damping *= growth;
			growth *= 2;
			if (damping > 1e30) {
				status = 4;
				break;
			}
		}
	}

	problem.evaluate(solution);
	problem.linearise();
	return {solution, cost, iterations, status};
}
