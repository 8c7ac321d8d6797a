import {sparseLeastSquares} from '../../science/numeric/sparseLeastSquares.ts';
import {componentsOf} from './components.ts';
import {neededConventions, rigidMotions, unseenMotions} from './datum.ts';
import {type Convention, offsetsOf, problemOf} from './equations.ts';
import type {SurveyNetwork} from './network.ts';
import type {Observation} from './observations.ts';
import {offeredConventions} from './offeredConventions.ts';
import type {Rows} from './reliability.ts';

export type SolvedNetwork = {
	readonly state: Float64Array;
	/** Offset into the state of each unknown. */
	readonly free: readonly number[];
	/** Place among the unknowns of each offset of the state, −1 where it is none. */
	readonly columnOf: Int32Array;
	readonly rows: Rows;
	readonly cost: number;
	readonly conventions: readonly Convention[];
	/** Displacements of the state that only the conventions hold: an orthonormal set. */
	readonly unseen: readonly Float64Array[];
	/** Part of the network that each point belongs to, −1 for points without readings. */
	readonly components: Int32Array;
	/** Part that holds the reference seat, or the largest where no reading touches the seat. */
	readonly home: number;
};

function homeOf(components: Int32Array): number {
	if (components[0]! >= 0) return components[0]!;
	const sizes = new Map<number, number>();
	for (const part of components) if (part >= 0) sizes.set(part, (sizes.get(part) ?? 0) + 1);
	return [...sizes].sort((a, b) => b[1] - a[1])[0]?.[0] ?? -1;
}

/** Adjusts one set of observations from one start. */
export function solveNetwork(
	network: SurveyNetwork,
	observations: readonly Observation[],
	start: Float64Array,
): SolvedNetwork {
	const {points, exactDimensions} = network;
	const components = componentsOf(observations, points.length);
	const home = homeOf(components);
	const isFree = new Uint8Array(start.length);
	for (const observation of observations) {
		if (observation.kind === 'points')
			isFree.fill(1, observation.from, observation.from + 3).fill(1, observation.to, observation.to + 3);
		else if (observation.kind !== 'planes') isFree.fill(1, observation.point, observation.point + 3);
		for (const offset of offsetsOf(observation)) if (!exactDimensions.has(offset)) isFree[offset] = 1;
	}

	const free = [...isFree.keys()].filter(offset => isFree[offset]);
	const columnOf = new Int32Array(start.length).fill(-1);
	for (const [column, offset] of free.entries()) columnOf[offset] = column;
	const members = [...points.keys()].filter(index => home >= 0 && components[index] === home);
	const dimensions = free.filter(offset => offset >= points.length * 3);
	const motions = [
		...(members.length > 0 ? rigidMotions(start, members) : []),
		...dimensions.map(offset => {
			const motion = new Float64Array(start.length);
			motion[offset] = 1;
			return motion;
		}),
	];
	const unseen = unseenMotions(observations, start, motions);
	const conventions =
		unseen.length > 0
			? neededConventions(unseen, offeredConventions(network, observations, start, members, dimensions))
			: [];
	const problem = problemOf(observations, conventions, start, free);
	const found = sparseLeastSquares(
		problem,
		Float64Array.from(free, offset => start[offset]!),
		{
			step: 1e-9,
			gradient: 1e-11,
			cost: 1e-13,
			iterations: 40,
		},
	);
	const state = Float64Array.from(start);
	for (const [column, offset] of free.entries()) state[offset] = found.solution[column]!;
	return {
		state,
		free,
		columnOf,
		rows: {
			columns: problem.columns,
			derivatives: found.derivatives,
			residuals: found.residuals,
			covariance: found.covariance ?? new Float64Array(free.length ** 2),
			unknowns: free.length,
		},
		cost: found.cost,
		conventions,
		unseen,
		components,
		home,
	};
}
