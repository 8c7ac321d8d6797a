import {sparseLeastSquares} from '../../science/numeric/sparseLeastSquares.ts';
import {problemOf} from './equations.ts';
import type {Observation} from './observations.ts';
import type {Vector} from './vectors.ts';

export type LocalFit = {readonly at: Vector; readonly cost: number};

const place = (state: Float64Array, point: number): Vector => [
	state[point * 3]!,
	state[point * 3 + 1]!,
	state[point * 3 + 2]!,
];

/** Fits one point to the observations that touch it, everything else held where the state has it. */
export function fitPoint(
	observations: readonly Observation[],
	state: Float64Array,
	point: number,
	start: Vector,
): LocalFit {
	const free = [point * 3, point * 3 + 1, point * 3 + 2];
	const problem = problemOf(observations, [], state, free);
	const {solution, cost} = sparseLeastSquares(problem, Float64Array.from(start), {
		step: 1e-7,
		iterations: 60,
	});
	return {at: [solution[0]!, solution[1]!, solution[2]!], cost};
}

/** A fit this good needs no second try from another side (half a sum of squares in sigmas). */
const goodCost = 8;

/**
Moves a point of the state to where its observations want it. Starts where it stands; where that ends in a poor fit,
from the other sides of the reference seat as well.

@param knownAxes - Axes on which the point was put by readings to planes; these are not mirrored.
*/
export function bestPlace(
	observations: readonly Observation[],
	state: Float64Array,
	point: number,
	knownAxes: readonly number[],
): void {
	const start = place(state, point);
	let best = fitPoint(observations, state, point, start);
	const open = [0, 1, 2].filter(axis => !knownAxes.includes(axis));
	for (let sides = 1; best.cost > goodCost && sides < 1 << open.length; sides++) {
		const other = [...start] as [number, number, number];
		for (const [bit, axis] of open.entries())
			if (sides & (1 << bit)) other[axis] = 2 * state[axis]! - other[axis]!;
		const fit = fitPoint(observations, state, point, other);
		if (fit.cost < best.cost - 1) best = fit;
	}

	state.set(best.at, point * 3);
}
