import {symmetricEigen} from '../../science/numeric/symmetricEigen.ts';
import {unitVector} from './directions.ts';
import {fitPoint} from './localFit.ts';
import type {SurveyNetwork} from './network.ts';
import type {Observation} from './observations.ts';
import {outsideBy, type RoomSize} from './roomSize.ts';
import type {SolvedNetwork} from './solveNetwork.ts';
import {nominalDirection} from './starts.ts';
import {distance, dot, scale, subtract, type Vector} from './vectors.ts';

/** What decided between two places that fit the readings alike. */
export type MirrorDecision = {
	readonly point: number;
	readonly decidedBy: 'readings' | 'room' | 'side' | 'nothing';
	readonly other: Vector;
	/** Whether the other place was taken, so that the network must be adjusted again. */
	readonly isSwap: boolean;
};

/** Half a difference of sums of squares below which both places count as possible: two standard deviations. */
const alikeCost = 2;
/** Places closer than this are the same place, metres. */
const sameMetres = 0.1;
/** Beyond this a point is outside the room, not just held badly against a wall, metres. */
const outsideMetres = 0.05;

const at = (state: Float64Array, point: number): Vector => [
	state[point * 3]!,
	state[point * 3 + 1]!,
	state[point * 3 + 2]!,
];

/** Normal of the plane about which the other ends lie flattest, using only the axes that no wall reading gives. */
function mirrorNormal(ends: readonly Vector[], open: readonly number[]): Vector {
	const unit = (axis: number): Vector => [axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0];
	if (open.length === 1) return unit(open[0]!);
	const middle = [0, 1, 2].map(axis => ends.reduce((sum, end) => sum + end[axis]!, 0) / ends.length);
	const spread = open.map(a =>
		open.map(b => ends.reduce((sum, end) => sum + (end[a]! - middle[a]!) * (end[b]! - middle[b]!), 0)),
	);
	const flattest = symmetricEigen(spread).vectors[0]!;
	const normal: [number, number, number] = [0, 0, 0];
	for (const [index, axis] of open.entries()) normal[axis] = flattest[index]!;
	return normal;
}

/** The observations that each point takes part in, in their order. */
function touchingByPoint(points: number, observations: readonly Observation[]): Observation[][] {
	const touching = Array.from({length: points}, (): Observation[] => []);
	for (const observation of observations) {
		if (observation.kind === 'points') {
			touching[observation.from / 3]!.push(observation);
			if (observation.to !== observation.from) touching[observation.to / 3]!.push(observation);
		} else if (observation.kind !== 'planes') {
			touching[observation.point / 3]!.push(observation);
		}
	}

	return touching;
}

/**
Looks, point by point, for a second place that fits the readings as well, as mirror images do, and decides.

Order of the decision: the readings themselves; then the room, because nothing stands behind a wall; then the side
where the channel belongs; else nothing decides and the place found first stays.

@param looseMetres - Worst standard uncertainty of each point; where it is large there is no second place but a range.
*/
export function mirrorDecisions(
	network: SurveyNetwork,
	observations: readonly Observation[],
	solved: SolvedNetwork,
	size: RoomSize,
	looseMetres: readonly number[],
): MirrorDecision[] {
	const {state} = solved;
	const decisions: MirrorDecision[] = [];
	const byPoint = touchingByPoint(network.points.length, observations);
	for (const [point, {id}] of network.points.entries()) {
		if (solved.components[point]! < 0 || looseMetres[point]! > 0.3) continue;
		const touching = byPoint[point]!;
		const open = [0, 1, 2].filter(axis => !touching.some(o => o.kind === 'plane' && o.axis === axis));
		const ends = touching.flatMap(o =>
			o.kind === 'points' ? [at(state, (o.from / 3 === point ? o.to : o.from) / 3)] : [],
		);
		if (open.length === 0 || ends.length < open.length) continue;
		const here = at(state, point);
		const normal = mirrorNormal(ends, open);
		const middle = scale(
			ends.reduce<Vector>((sum, end) => [sum[0] + end[0], sum[1] + end[1], sum[2] + end[2]], [0, 0, 0]),
			1 / ends.length,
		);
		const away = dot(subtract(here, middle), normal);
		const mine = fitPoint(touching, state, point, here);
		const other = fitPoint(touching, state, point, subtract(here, scale(normal, 2 * away)));
		if (distance(other.at, here) < sameMetres) continue;
		const gain = mine.cost - other.cost;
		if (gain < -alikeCost) continue;
		const decide = (decidedBy: MirrorDecision['decidedBy'], isSwap: boolean) =>
			decisions.push({point, decidedBy, other: isSwap ? here : other.at, isSwap});
		if (gain > alikeCost) {
			state.set(other.at, point * 3);
			decide('readings', true);
			continue;
		}

		const isOut = [here, other.at].map(place => outsideBy(size, place) > outsideMetres);
		const direction = point === 0 ? undefined : nominalDirection(network.profile, id);
		const towards = (place: Vector) => {
			const ray = subtract(place, at(state, 0));
			return direction ? dot(ray, unitVector(direction)) / Math.hypot(...ray) : 0;
		};
		const lead = towards(here) - towards(other.at);
		if (isOut[0] !== isOut[1]) decide('room', isOut[0]!);
		else if (direction && Math.abs(lead) > 0.02) decide('side', lead < 0);
		else decide('nothing', false);
		if (decisions.at(-1)!.isSwap) state.set(other.at, point * 3);
	}

	return decisions;
}
