import type {Profile} from '../../../profile/types.ts';
import type {NetworkResult} from '../../survey/result.ts';

/**
Mean of the tape readings between two ends, in either direction; readings put aside do not count.

@returns Metres, or undefined without a reading of more than nothing.
*/
export function tapeDistanceM(profile: Profile, one: string, other: string): number | undefined {
	const found = (profile.tape ?? []).filter(
		({from, to, setAside, metres}) =>
			!setAside && metres > 0 && ((from === one && to === other) || (from === other && to === one)),
	);
	if (found.length === 0) return undefined;
	return found.reduce((sum, {metres}) => sum + metres, 0) / found.length;
}

/**
Distances between speakers and seats: the mean of direct readings, else from the net of all tape readings where that
fixes both ends.

@param survey - The adjusted network, where it is at hand.
@returns A function that gives metres, or undefined where the tape does not tell.
*/
export function distanceFinder(
	profile: Profile,
	survey: NetworkResult | undefined,
): (one: string, other: string) => number | undefined {
	let places: ReadonlyMap<string, readonly number[]> | undefined;
	return (one, other) => {
		const direct = tapeDistanceM(profile, one, other);
		if (direct !== undefined) return direct;
		places ??= placesOf(survey);
		const [from, to] = [places.get(one), places.get(other)];
		if (!from || !to) return undefined;
		const metres = Math.hypot(...from.map((coordinate, axis) => coordinate - to[axis]!));
		return metres > 0 ? metres : undefined;
	};
}

/** Points that the tape readings fix against the walls. Without walls a net says no more than the readings do. */
function placesOf(survey: NetworkResult | undefined): ReadonlyMap<string, readonly number[]> {
	if (!survey || survey.conventions.length > 0) return new Map();
	return new Map(survey.points.filter(({status}) => status === 'determined').map(({id, at}) => [id, at]));
}
