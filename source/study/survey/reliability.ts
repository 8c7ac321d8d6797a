import {normalQuantileAbove} from '../../science/numeric/normalQuantile.ts';
import {rowWidth} from './equations.ts';
import type {Joined} from './repeats.ts';

/** How often a net without a wrong reading may have one accused. */
const accusedShare = 0.02;

/**
Standardised residual above which a reading cannot be right: 2 % a net, shared alike by all that are tested (Bonferroni):
3.44 at 35 readings, 3.63 at 70.

@see Baarda, A testing procedure for use in geodetic networks (1968), for the test of one reading.
*/
export const criticalValueOf = (readings: number): number =>
	normalQuantileAbove(accusedShare / (2 * Math.max(1, readings)));

/** A blunder this far beyond the critical value is found with a probability of 0.8. */
const powerMargin = 0.8416;
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

/** The test of one reading, repeats each by themselves. */
export type ReadingTest = {
	/** Row of the adjustment that holds it, with its repeats. */
	readonly row: number;
	/** Adjusted minus read, metres. */
	readonly residualMetres: number;
	/** Share of its error that shows in its own residual, 0 to 1. */
	readonly redundancy: number;
	/** w = v/(σ√r); 0 where the reading is uncontrolled. */
	readonly standardised: number;
};

/**
Redundancy numbers and standardised residuals of all readings.

A repeat is tested as if it stood alone in the adjustment: the variance of what is adjusted is that of its row.

@param rows - Of the adjustment of `joined`, in its order; rows after them (conventions) are left out.
@returns For each row its members' tests.
*/
export function testsOf(rows: Rows, joined: readonly Joined[]): ReadingTest[][] {
	return joined.map(({observation, members}, row) => {
		const share = adjustedCovariance(rows, row, row);
		const variance = share * observation.sigmaMetres ** 2;
		const adjusted = observation.metres + rows.residuals[row]! * observation.sigmaMetres;
		return members.map(({metres, sigmaMetres}): ReadingTest => {
			const redundancy = Math.min(1, Math.max(0, 1 - variance / sigmaMetres ** 2));
			const residualMetres = adjusted - metres;
			const standardised =
				redundancy < leastRedundancy ? 0 : residualMetres / (sigmaMetres * Math.sqrt(redundancy));
			return {row, residualMetres, redundancy, standardised};
		});
	});
}

/** Blunder that is found with a probability of 80 %, metres; infinite where the reading is uncontrolled. */
export const detectableMetresOf = (sigmaMetres: number, redundancy: number, critical: number): number =>
	redundancy < leastRedundancy
		? Number.POSITIVE_INFINITY
		: ((critical + powerMargin) * sigmaMetres) / Math.sqrt(redundancy);

/**
Correlation of the test statistics of two readings: near ±1 the test cannot tell one from the other.

@param covariance - Of the two adjusted readings, m².
*/
export function testCorrelation(
	covariance: number,
	one: {readonly sigmaMetres: number; readonly redundancy: number},
	other: {readonly sigmaMetres: number; readonly redundancy: number},
): number {
	return -covariance / (one.sigmaMetres * other.sigmaMetres * Math.sqrt(one.redundancy * other.redundancy));
}
