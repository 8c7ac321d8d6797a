import type {Profile} from '../../profile/types.ts';
import type {NetworkResult} from '../survey/result.ts';
import {type Compared, type PlanChange, planChange} from './planChange.ts';
import {type PlanPoints, planPoints} from './planPoints.ts';

/** Two floor plans and what differs between them. */
export type ComparedPlans = {
	readonly older: PlanPoints;
	/** What moved carries the place where it stood, unless the room is turned round or another. */
	readonly newer: PlanPoints;
	readonly change: PlanChange;
	readonly sameRoom: boolean;
};

/** What a plan is drawn from: a profile's adjusted tape network, and its picture. */
export type Surveyed = {readonly network: NetworkResult; readonly screen?: Profile['screen']};

/** Aims cross the trails of what moved, and tell nothing of the change. */
const withoutAims = ({room, points}: PlanPoints): PlanPoints => ({
	room,
	points: points.map(({aim: _, ...point}) => point),
});

/**
The floor plans of two profiles, as far as the tape tells, with what moved and how far.

@param compared - Things that carry another id in the newer profile, and whether both are of one room.
*/
export function comparePlans(older: Surveyed, newer: Surveyed, compared: Compared): ComparedPlans {
	const change = planChange(older.network, newer.network, compared);
	const from = new Map(
		change.turn || !compared.sameRoom ? [] : change.moved.map(move => [move.id, move.from] as const),
	);
	const plan = withoutAims(planPoints(newer.network, newer.screen));
	return {
		older: withoutAims(planPoints(older.network, older.screen)),
		newer: {
			...plan,
			points: plan.points.map(point => {
				const was = from.get(point.id);
				return was ? {...point, before: {x: was[0], y: was[1], z: was[2]}} : point;
			}),
		},
		change,
		sameRoom: compared.sameRoom,
	};
}
