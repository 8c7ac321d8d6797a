import {rowWidth} from './equations.ts';

/** Probability 0.001 of calling a sound reading wrong, two-sided. @see Baarda, A testing procedure for use in geodetic networks (1968). */
export const criticalValue = 3.2905;
/** Detectable with a probability of 0.8 at that level: 3.2905 + 0.8416. */
export const noncentrality = 4.1321;
/** Below this share of redundancy a residual says nothing about its reading. */
export const leastRedundancy = 0.01;

/** The rows of an adjustment in the form that the sparse solver keeps them. */
export type Rows = {
	readonly columns: Int32Array;
	/** Derivatives divided by the sigmas. */
	readonly derivatives: Float64Array;
	/** Residuals (adjusted minus read) divided by the sigmas. */
	readonly residuals: Float64Array;
	readonly covariance: Float64Array;
	readonly unknowns: number;
};

/**
aᵢ·Q·aⱼᵀ for two rows: the covariance of two adjusted readings, in units of their sigmas.

@see Ghilani and Wolf, Adjustment Computations, section 21.
*/
export function adjustedCovariance(
	{columns, derivatives, covariance, unknowns}: Rows,
	i: number,
	j: number,
): number {
	let sum = 0;
	for (let a = 0; a < rowWidth; a++) {
		const row = columns[i * rowWidth + a]!;
		if (row < 0) continue;
		let inner = 0;
		for (let b = 0; b < rowWidth; b++) {
			const column = columns[j * rowWidth + b]!;
			if (column >= 0) inner += covariance[row * unknowns + column]! * derivatives[j * rowWidth + b]!;
		}

		sum += derivatives[i * rowWidth + a]! * inner;
	}

	return sum;
}

/**
Redundancy numbers: the share of each reading's error that shows in its own residual.

@param count - Number of readings; rows after them (conventions) are left out.
@returns Shape (count), 0 to 1; their sum is the number of surplus readings.
*/
export function redundancyNumbers(rows: Rows, count: number): Float64Array {
	return Float64Array.from({length: count}, (_, row) =>
		Math.min(1, Math.max(0, 1 - adjustedCovariance(rows, row, row))),
	);
}

/** w = v/(σ√r) with the sign of adjusted minus read; 0 where the reading is uncontrolled. */
export function standardisedResiduals(rows: Rows, redundancy: Float64Array): Float64Array {
	return redundancy.map((r, row) => (r < leastRedundancy ? 0 : rows.residuals[row]! / Math.sqrt(r)));
}

/** Correlation of the test statistics of two readings: near ±1 the test cannot tell one from the other. */
export function testCorrelation(rows: Rows, redundancy: Float64Array, i: number, j: number): number {
	return -adjustedCovariance(rows, i, j) / Math.sqrt(redundancy[i]! * redundancy[j]!);
}
