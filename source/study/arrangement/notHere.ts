import type {Room} from '../../profile/types.ts';
import type {RoomShape} from '../room/shape.ts';
import type {Vector} from '../survey/vectors.ts';
import {subSize} from './subPlaces.ts';

type Feature = NonNullable<Room['features']>[number];

/** Nothing is offered this near to a place that was refused, along its wall, metres. */
const stretchMetres = 0.4;
/** A place within this of a wall stands at it, metres. */
const atWallMetres = 0.6;

const rounded = (metres: number) => Math.round(metres * 1000) / 1000;

/** What marks the surroundings of a place as "not here", for good: a stretch of its wall, or of the floor. */
export function notHereAt([x, y]: Vector, {widthMetres, lengthMetres}: RoomShape, note?: string): Feature {
	const about = {kind: 'notHere' as const, ...(note !== undefined && note !== '' && {note})};
	const walls = [
		{on: 'wall:left' as const, off: x, along: y, size: lengthMetres},
		{on: 'wall:right' as const, off: widthMetres - x, along: y, size: lengthMetres},
		{on: 'wall:front' as const, off: y, along: x, size: widthMetres},
		{on: 'wall:back' as const, off: lengthMetres - y, along: x, size: widthMetres},
	];
	const nearest = walls.reduce((best, wall) => (wall.off < best.off ? wall : best));
	if (nearest.off <= atWallMetres) {
		const {on, along, size} = nearest;
		return {
			on,
			...about,
			fromMetres: rounded(Math.max(0, along - stretchMetres)),
			toMetres: rounded(Math.min(size, along + stretchMetres)),
		};
	}

	const half = subSize.halfMetres + 0.1;
	return {
		on: 'floor',
		...about,
		leftMetres: rounded(Math.max(0, x - half)),
		rightMetres: rounded(Math.min(widthMetres, x + half)),
		nearMetres: rounded(Math.max(0, y - half)),
		farMetres: rounded(Math.min(lengthMetres, y + half)),
	};
}
