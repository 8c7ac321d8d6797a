import type {Profile} from '../../profile/types.ts';
import type {NetworkResult} from '../survey/result.ts';
import {distance, type Vector} from '../survey/vectors.ts';
import {isKnown} from './angles.ts';

/** How one thing stands against where it was planned. */
export type AgainstPlan = {
	readonly id: string;
	readonly plannedAt: Vector;
	readonly at: Vector;
	/** Along the floor; height is not planned to a hand's breadth. Metres. */
	readonly offMetres: number;
	/** To the right of the plan, and behind it, metres. */
	readonly rightMetres: number;
	readonly backMetres: number;
	/** Within what the plan says to cost next to nothing; undefined where it says nothing. */
	readonly isGoodEnough: boolean | undefined;
};

/** Everything that is planned and whose place the tape tells. */
export function againstPlan(
	{planned}: Pick<Profile, 'planned'>,
	{points}: Pick<NetworkResult, 'points'>,
): AgainstPlan[] {
	return (planned?.places ?? []).flatMap(({id, xMetres, yMetres, zMetres}): AgainstPlan[] => {
		const point = points.find(one => one.id === id && isKnown(one));
		if (!point) return [];
		const {at} = point;
		const offMetres = distance([at[0], at[1], 0], [xMetres, yMetres, 0]);
		return [
			{
				id,
				plannedAt: [xMetres, yMetres, zMetres],
				at,
				offMetres,
				rightMetres: at[0] - xMetres,
				backMetres: at[1] - yMetres,
				isGoodEnough: planned?.withinMetres === undefined ? undefined : offMetres <= planned.withinMetres,
			},
		];
	});
}
