import type {Assumed} from './assumed.ts';
import {isChecked} from './checked.ts';
import type {SurveyNetwork} from './network.ts';
import {statusOf, worstSigma} from './placed.ts';
import type {Ellipse, PlacedPoint} from './result.ts';
import type {SolvedNetwork} from './solveNetwork.ts';

/**
Standard error ellipse of two coordinates.

@see Ghilani and Wolf, Adjustment Computations, chapter 19.
*/
export function ellipseOf(varianceX: number, varianceY: number, covariance: number): Ellipse {
	const middle = (varianceX + varianceY) / 2;
	const radius = Math.hypot((varianceX - varianceY) / 2, covariance);
	return {
		semiMajorMetres: Math.sqrt(Math.max(0, middle + radius)),
		semiMinorMetres: Math.sqrt(Math.max(0, middle - radius)),
		angleDegrees: (Math.atan2(2 * covariance, varianceX - varianceY) / 2) * (180 / Math.PI),
	};
}

/**
The points with places, uncertainties and status.

@param hiddenAt - Largest slip that a reading of a point could hide, metres.
*/
export function placedPoints(
	network: SurveyNetwork,
	solved: SolvedNetwork,
	{by, covariance}: Assumed,
	hiddenAt: (point: number) => number,
): PlacedPoint[] {
	const {size, values} = covariance;
	return network.points.map((point, index) => {
		const offset = index * 3;
		const worstSigmaMetres = worstSigma(covariance, index);
		const assumedBy = by.get(index);
		const status = statusOf(worstSigmaMetres, solved.components[index]! >= 0, assumedBy !== undefined);
		const variance = (a: number, b: number) => values[(offset + a) * size + offset + b]!;
		return {
			...point,
			at: [solved.state[offset]!, solved.state[offset + 1]!, solved.state[offset + 2]!],
			sigmaMetres: [Math.sqrt(variance(0, 0)), Math.sqrt(variance(1, 1)), Math.sqrt(variance(2, 2))],
			worstSigmaMetres,
			ellipse: ellipseOf(variance(0, 0), variance(1, 1), variance(0, 1)),
			status,
			isChecked: status === 'determined' && isChecked(hiddenAt(index)),
			...(assumedBy && {assumedBy}),
		};
	});
}
