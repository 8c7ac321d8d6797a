import {median} from '../../../science/numeric/statistics.ts';
import type {Uncertain} from '../../../science/numeric/uncertain.ts';

/** A common shift smaller than this is of no use to know, dB. */
const leastShiftDb = 0.5;
/** Of 1000 clean rounds one shows so large a shift; as 3.29 for a two-sided 0.1 %. */
const shiftCritical = 3.29;
/** The median of n normal values scatters √(π/2) as much as their mean. */
const medianFactor = Math.sqrt(Math.PI / 2);

/** What all mains have in common, and whether that is more than chance. */
export type MasterShift = Uncertain & {readonly isMoved: boolean};

/**
The shift that the mains have in common, as by another master volume: the median of their residuals, which a few wrong
entries do not pull.

@param residuals - Of mains alone with noise, dB.
@param sigmas - Shape as `residuals`, dB, each > 0.
@returns `undefined` below three: two cannot tell a moved master volume from one channel that is off.
*/
export function masterShift(
	residuals: readonly number[],
	sigmas: readonly number[],
): MasterShift | undefined {
	if (residuals.length < 3) return undefined;
	const value = median(residuals);
	const meanSquare = sigmas.reduce((sum, sigma) => sum + sigma ** 2, 0) / sigmas.length;
	const sigma = medianFactor * Math.sqrt(meanSquare / residuals.length);
	return {value, sigma, isMoved: Math.abs(value) >= Math.max(leastShiftDb, shiftCritical * sigma)};
}
