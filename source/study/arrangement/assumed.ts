import {isLfe} from '../../profile/channels.ts';
import {layoutOf} from '../../profile/layouts.ts';
import type {Profile} from '../../profile/types.ts';
import type {Placed} from '../room/roomStudy.ts';
import type {RoomShape} from '../room/shape.ts';
import {isInside} from '../room/shape.ts';
import type {Vector} from '../survey/vectors.ts';
import {subSize} from './subPlaces.ts';

/** Ear height in an armchair, and the place of one listener on a sofa, metres. Common practice, no source. */
const usual = {earMetres: 1.1, elbowMetres: 0.65, seatShare: 0.62, speakerMetres: 0.3} as const;

/**
Where everything would usually stand in a room of which nothing but the walls is known: seats side by side in the middle
of the width, speakers at their layout's angles near the walls, subs in the corners.

@param seatMetres - From the screen wall to the reference seat; about five eighths of the length where not given.
*/
export function assumedPlaces(
	profile: Pick<Profile, 'seats' | 'channels' | 'subs'>,
	shape: RoomShape,
	seatMetres: number | undefined,
): {readonly seats: Placed[]; readonly subs: Placed[]; readonly speakers: Placed[]} {
	const {widthMetres, lengthMetres} = shape;
	const y = seatMetres ?? usual.seatShare * lengthMetres;
	const ordered = [...profile.seats].sort(
		(a, b) => Number(b.reference ?? false) - Number(a.reference ?? false),
	);
	// The reference seat in the middle, the others to its left and right in turn.
	const seats = ordered.map(({id}, i): Placed => {
		const side = i % 2 === 1 ? -Math.ceil(i / 2) : i / 2;
		return {id, at: [widthMetres / 2 + side * usual.elbowMetres, y, usual.earMetres]};
	});
	const ear = seats[0]!.at;
	const {places} = layoutOf(profile.channels.map(({id}) => id));
	const speakers = profile.channels.flatMap(({id}): Placed[] => {
		const place = places.get(id);
		return isLfe(id) || !place
			? []
			: [{id, at: towards(shape, ear, place.azimuthDegrees, place.elevationDegrees)}];
	});
	const off = subSize.halfMetres + 0.05;
	const corners: readonly Vector[] = [
		[off, off, subSize.coneMetres],
		[widthMetres - off, off, subSize.coneMetres],
		[off, lengthMetres - off, subSize.coneMetres],
		[widthMetres - off, lengthMetres - off, subSize.coneMetres],
	];
	const free = corners.filter(corner => isInside(shape, corner));
	const subs = (profile.subs ?? []).map(({id}, i): Placed => ({id, at: free[i % free.length]!}));
	return {seats, subs, speakers};
}

/** The farthest place in a direction from the ear that is a hand's width off every wall. */
function towards(shape: RoomShape, ear: Vector, azimuthDegrees: number, elevationDegrees: number): Vector {
	const [azimuth, elevation] = [azimuthDegrees, elevationDegrees].map(degrees => (degrees * Math.PI) / 180);
	const way: Vector = [
		-Math.sin(azimuth!) * Math.cos(elevation!),
		-Math.cos(azimuth!) * Math.cos(elevation!),
		Math.sin(elevation!),
	];
	let at = ear;
	for (let metres = 0.1; metres < 40; metres += 0.05) {
		const beyond = metres + usual.speakerMetres;
		if (!isInside(shape, [ear[0] + way[0] * beyond, ear[1] + way[1] * beyond, ear[2] + way[2] * beyond]))
			break;
		at = [ear[0] + way[0] * metres, ear[1] + way[1] * metres, ear[2] + way[2] * metres];
	}

	return at;
}
