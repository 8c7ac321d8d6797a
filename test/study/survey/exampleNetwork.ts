import type {Profile} from '../../../source/profile/types.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import type {NetworkResult} from '../../../source/study/survey/result.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';
import {bareProfile, type Ends, withReadings} from './room.ts';

/** Size of the room that places are put in, metres. */
export const roomSize: Vector = [5, 6, 2.6];

/** A profile and its network with things just where they are put, read without error to three planes each. */
export function placedAt(
	places: Readonly<Record<string, Vector>>,
	changes: Partial<Profile> = {},
): {readonly profile: Profile; readonly result: NetworkResult} {
	const [widthMetres, lengthMetres, heightMetres] = roomSize;
	const bare = {
		...bareProfile(places, {widthMetres, lengthMetres, ceiling: {kind: 'flat', heightMetres}}),
		...changes,
	};
	const ends = Object.keys(places).flatMap(id =>
		['wall:left', 'wall:front', 'floor'].map((plane): Ends => [id, plane]),
	);
	const profile = withReadings(bare, ends, {places, size: roomSize});
	return {profile, result: adjustNetwork(profile)};
}

/** A place in a direction from the ear at (2.5, 3.8, 1.1); azimuth positive to the left. */
export const ear: Vector = [2.5, 3.8, 1.1];
export function towards(azimuthDegrees: number, elevationDegrees: number, metres: number): Vector {
	const [azimuth, elevation] = [azimuthDegrees, elevationDegrees].map(angle => (angle * Math.PI) / 180) as [
		number,
		number,
	];
	return [
		ear[0] - metres * Math.cos(elevation) * Math.sin(azimuth),
		ear[1] - metres * Math.cos(elevation) * Math.cos(azimuth),
		ear[2] + metres * Math.sin(elevation),
	];
}

export const screenAhead: Vector = [2.5, 0.05, 1.1];
