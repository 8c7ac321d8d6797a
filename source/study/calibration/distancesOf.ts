import type {DistanceResult, Solution} from './result.ts';

/** Distance of every channel's speaker to the reference seat, as far as it was taped. */
export function distancesOf({channels}: Pick<Solution, 'channels'>): ReadonlyMap<string, DistanceResult> {
	return new Map(channels.flatMap(({id, distance}) => (distance ? [[id as string, distance] as const] : [])));
}
