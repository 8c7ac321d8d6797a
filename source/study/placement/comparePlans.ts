import type {Profile} from '../../profile/types.ts';
import {adjustNetwork} from '../survey/adjust.ts';
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

/** Aims cross the trails of what moved, and tell nothing of the change. */
const withoutAims = ({room, points}: PlanPoints): PlanPoints => ({
	room,
	points: points.map(({aim: _, ...point}) => point),
});

/**
The floor plans of two profiles, as far as the tape tells, with what moved and how far.

@param compared - Things that carry another id in the newer profile, and whether both are of one room.
*/
export function comparePlans(older: Profile, newer: Profile, compared: Compared): ComparedPlans {
	const [before, after] = [adjustNetwork(older), adjustNetwork(newer)];
	const change = planChange(before, after, compared);
	const from = new Map(
		change.turn || !compared.sameRoom ? [] : change.moved.map(move => [move.id, move.from] as const),
	);
	const plan = withoutAims(planPoints(after, newer.screen));
	return {
		older: withoutAims(planPoints(before, older.screen)),
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
