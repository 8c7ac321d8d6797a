import type {Uncertain} from '../../science/numeric/uncertain.ts';
import {wrapDegrees} from '../survey/directions.ts';
import type {NetworkResult} from '../survey/result.ts';

/** The coordinates of a network's points in one array, x, y, z each, as its covariance orders them. */
export function stateOf({points}: Pick<NetworkResult, 'points'>): Float64Array {
	return Float64Array.from(points.flatMap(({at}) => at));
}

/** Step of the central differences, metres: curvature and rounding both stay below a millionth. */
const stepMetres = 1e-4;

/**
A function of a few points with its standard uncertainty by first-order propagation.

@param points - Places of the points in `result.points` that the function depends on.
@param value - Result in any unit; angles in degrees may jump at ±180°.
@see JCGM 100:2008 (GUM), eq. 13: correlated input quantities.
*/
export function propagate(
	result: Pick<NetworkResult, 'points' | 'covariance'>,
	points: readonly number[],
	value: (state: Float64Array) => number,
	{isAngle = false}: {readonly isAngle?: boolean} = {},
): Uncertain {
	const state = stateOf(result);
	const offsets = [...new Set(points)].flatMap(point => [0, 1, 2].map(axis => point * 3 + axis));
	const slopes = offsets.map(offset => {
		const kept = state[offset]!;
		state[offset] = kept + stepMetres;
		const above = value(state);
		state[offset] = kept - stepMetres;
		const below = value(state);
		state[offset] = kept;
		const change = isAngle ? wrapDegrees(above - below) : above - below;
		return change / (2 * stepMetres);
	});
	const {size, values} = result.covariance;
	let variance = 0;
	for (const [a, left] of offsets.entries()) {
		for (const [b, right] of offsets.entries())
			variance += slopes[a]! * slopes[b]! * values[left * size + right]!;
	}

	return {value: value(state), sigma: Math.sqrt(Math.max(0, variance))};
}
