import type {Profile} from '../../profile/types.ts';
import type {NetworkResult} from '../survey/result.ts';
import type {Vector} from '../survey/vectors.ts';
import {isKnown} from './angles.ts';
import {type FloorMiss, floorMiss} from './goodEnough.ts';

/** How one thing stands against where it was planned. */
export type AgainstPlan = FloorMiss & {
	readonly id: string;
	readonly plannedAt: Vector;
	readonly at: Vector;
	/** To the right of the plan, and behind it, metres. */
	readonly rightMetres: number;
	readonly backMetres: number;
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
		const rightMetres = at[0] - xMetres;
		const backMetres = at[1] - yMetres;
		return [
			{
				id,
				plannedAt: [xMetres, yMetres, zMetres],
				at,
				rightMetres,
				backMetres,
				...floorMiss({planned}, [rightMetres, backMetres]),
			},
		];
	});
}

/** What was chosen to be carried, and how far it is: what stands, against its plan, and what the tape does not tell yet. */
export type PlanCarried = {
	readonly standing: readonly AgainstPlan[];
	readonly open: ReadonlyArray<{readonly id: string; readonly at: Vector}>;
};

/** How far a chosen plan is carried out; undefined where none was chosen. */
export function planCarried(
	profile: Pick<Profile, 'planned'>,
	network: Pick<NetworkResult, 'points'>,
): PlanCarried | undefined {
	const {planned} = profile;
	// Places without what they cost are where a plan began, not what was chosen.
	if (planned?.withinMetres === undefined) return undefined;
	const standing = againstPlan(profile, network);
	return {
		standing,
		open: planned.places.flatMap(({id, xMetres, yMetres, zMetres}) =>
			standing.some(one => one.id === id) ? [] : [{id, at: [xMetres, yMetres, zMetres] as const}],
		),
	};
}
