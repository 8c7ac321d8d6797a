import {median} from '../../../science/numeric/statistics.ts';
import type {Uncertain} from '../result.ts';

/** A common shift smaller than this is of no use to know, dB. */
const leastShiftDb = 0.5;
/** Of 1000 clean rounds one shows so large a shift; as 3.29 for a two-sided 0.1 %. */
const shiftCritical = 3.29;

/**
One shift that all residuals have in common, as by another master volume.

From the middle residual, then the weighted mean of those near it, so that a few wrong ones do not pull.

@param residuals - Shape (n), dB.
@param sigmas - Shape (n), dB, each > 0.
@returns `undefined` below three residuals, and where it is no more than chance.
*/
export function masterShift(residuals: readonly number[], sigmas: readonly number[]): Uncertain | undefined {
	if (residuals.length < 3) return undefined;
	const middle = median(residuals);
	let weights = 0;
	let sum = 0;
	let near = 0;
	for (const [index, residual] of residuals.entries()) {
		const sigma = sigmas[index]!;
		if (Math.abs(residual - middle) > 2.5 * sigma) continue;
		near++;
		weights += 1 / sigma ** 2;
		sum += residual / sigma ** 2;
	}

	// A minority that happens to agree is no common shift.
	if (near * 2 <= residuals.length) return undefined;
	const value = sum / weights;
	const sigma = 1 / Math.sqrt(weights);
	return Math.abs(value) >= Math.max(leastShiftDb, shiftCritical * sigma) ? {value, sigma} : undefined;
}
