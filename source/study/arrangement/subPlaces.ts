import {isInside, type RoomShape} from '../room/shape.ts';
import {surfacesOf} from '../room/surfaces.ts';
import {distance, type Vector} from '../survey/vectors.ts';
import {type KeepOut, standsOn} from './keepOut.ts';

/** A place for a sub, with the words for it on the way: which wall it stands at. */
export type SubPlace = {
	readonly at: Vector;
	/** The wall it stands at; none beside or behind the seats. */
	readonly wall?: 'wall:left' | 'wall:right' | 'wall:front' | 'wall:back' | 'wall:inner-x' | 'wall:inner-y';
	readonly isCorner: boolean;
};

/** Half the width of a usual subwoofer, and its cone's height above the floor, metres. Common practice, no source. */
export const subSize = {halfMetres: 0.2, coneMetres: 0.22} as const;
/** A sub nearer than this to a seat is heard by itself: computed responses no longer hold there. */
export const leastSeatMetres = 0.6;
/** A hand between cabinet and wall. */
const gapMetres = 0.05;

/**
Places where a sub may stand: along the walls at even steps, in the corners, and beside and behind the seats; none on what
is marked, none nearer than 0.6 m to a seat.

@param stepMetres - Distance between neighbours along a wall.
*/
export function subPlaces(
	shape: RoomShape,
	seats: readonly Vector[],
	keepOut: readonly KeepOut[],
	stepMetres: number,
): SubPlace[] {
	const {halfMetres, coneMetres} = subSize;
	const off = halfMetres + gapMetres;
	const found: SubPlace[] = [];
	const add = (place: SubPlace) => {
		const [x, y, z] = place.at;
		const fits = [-1, 1].every(side =>
			[-1, 1].every(end => isInside(shape, [x + side * halfMetres, y + end * halfMetres, z])),
		);
		if (!fits || standsOn(keepOut, x, y, halfMetres)) return;
		if (seats.some(seat => distance([seat[0], seat[1], coneMetres], place.at) < leastSeatMetres)) return;
		if (found.some(other => distance(other.at, place.at) < stepMetres / 2)) return;
		found.push(place);
	};

	for (const {plane, corners, normal} of surfacesOf(shape)) {
		if (plane === 'floor' || plane === 'ceiling') continue;
		const [from, to] = corners as [Vector, Vector];
		const along = distance(from, to);
		const count = Math.max(1, Math.round((along - 2 * off) / stepMetres));
		for (let i = 0; i <= count; i++) {
			const share = (off + ((along - 2 * off) * i) / count) / along;
			const at: Vector = [
				from[0] + (to[0] - from[0]) * share + normal[0] * off,
				from[1] + (to[1] - from[1]) * share + normal[1] * off,
				coneMetres,
			];
			add({at, wall: plane, isCorner: i === 0 || i === count});
		}
	}

	for (const [x, y] of seats)
		for (const [right, back] of [
			[-0.9, 0],
			[0.9, 0],
			[0, 0.9],
		] as const)
			add({at: [x + right, y + back, coneMetres], isCorner: false});
	return found;
}
