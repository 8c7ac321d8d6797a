import type {Profile} from '../../profile/types.ts';
import type {DistanceResult} from './result.ts';
import {solve} from './solve.ts';

/** Distance of every channel's speaker to the reference seat, as far as it was taped. */
export function distancesOf(profile: Profile): ReadonlyMap<string, DistanceResult> {
	return new Map(
		solve(profile).channels.flatMap(({id, distance}) =>
			distance ? [[id as string, distance] as const] : [],
		),
	);
}
