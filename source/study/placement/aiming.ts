import {isOverhead} from '../../profile/channels.ts';
import type {Plane} from '../../profile/types.ts';
import type {NetworkResult} from '../survey/result.ts';
import {ceilingHeightAt, type RoomSize} from '../survey/roomSize.ts';
import {add, scale, subtract, type Vector} from '../survey/vectors.ts';
import {isKnown} from './angles.ts';

/** Where a laser dot falls: a surface, the point, and the two tape distances that find it there. */
export type Dot = {
	readonly surface: Plane;
	readonly at: Vector;
	readonly distances: ReadonlyArray<{readonly from: Plane; readonly metres: number}>;
};

export type Aim = {
	readonly id: string;
	readonly seat: string;
	/** Turn away from facing square off its wall, 0 to 180. */
	readonly toeDegrees: number;
	/** The wall towards which it is turned. */
	readonly towards: 'wall:front' | 'wall:back' | 'wall:left' | 'wall:right';
	/** The wall that it stands at: with no turn it faces the opposite one. */
	readonly squareTo: 'wall:front' | 'wall:back' | 'wall:left' | 'wall:right';
	/** Positive up, negative down. */
	readonly tiltDegrees: number;
	/** First surface beyond the ear; absent where the room's size there is unknown. */
	readonly dot?: Dot;
	/** For a speaker overhead: the spot on the floor straight below, and how far its axis then misses the ear. */
	readonly plumb?: Dot & {readonly offAxisDegrees: number};
};

const degrees = 180 / Math.PI;

/** The two nearest planes to measure a spot from, on a given surface. */
function tapeDistances(size: RoomSize, surface: Plane, [x, y, z]: Vector): Dot['distances'] {
	const fromSide = size.widthMetres !== undefined && x > size.widthMetres / 2 ? 'wall:right' : 'wall:left';
	const side = {from: fromSide as Plane, metres: fromSide === 'wall:right' ? size.widthMetres! - x : x};
	const fromEnd = size.lengthMetres !== undefined && y > size.lengthMetres / 2 ? 'wall:back' : 'wall:front';
	const end = {from: fromEnd as Plane, metres: fromEnd === 'wall:back' ? size.lengthMetres! - y : y};
	const height = {from: 'floor' as const, metres: z};
	if (surface === 'wall:left' || surface === 'wall:right') return [end, height];
	// On the end walls the offset is always told from the left wall: it is the one to the left of the seat.
	if (surface === 'wall:front' || surface === 'wall:back') return [{from: 'wall:left', metres: x}, height];
	return [side, end];
}

/**
First surface that a beam meets after passing a point, in the room's box with its flat or sloped ceiling.

@param start - Where the beam begins, metres.
@param through - The point that it passes; surfaces before it do not count.
@returns Undefined where the beam leaves through a wall whose place is not known.
*/
export function firstSurface(size: RoomSize, start: Vector, through: Vector): Dot | undefined {
	const ray = subtract(through, start);
	const hits: Array<{surface: Plane; t: number}> = [];
	const offer = (surface: Plane, t: number) => {
		if (t > 1 && Number.isFinite(t)) hits.push({surface, t});
	};
	const unknown: number[] = [];
	for (const [axis, near, far, limit] of [
		[0, 'wall:left', 'wall:right', size.widthMetres],
		[1, 'wall:front', 'wall:back', size.lengthMetres],
	] as const) {
		const step = ray[axis];
		if (step < 0) offer(near, -start[axis] / step);
		else if (step > 0 && limit !== undefined) offer(far, (limit - start[axis]) / step);
		else if (step > 1e-9) unknown.push(axis);
	}

	if (ray[2] < 0) offer('floor', -start[2] / ray[2]);
	// The gap below the ceiling is linear along the beam, on a slope too.
	const gap = (t: number) => {
		const at = add(start, scale(ray, t));
		const top = ceilingHeightAt(size, at[0], at[1]);
		return top === undefined ? undefined : top - at[2];
	};
	const first = gap(0);
	const second = gap(1);
	if (first !== undefined && second !== undefined) {
		if (second < first) offer('ceiling', first / (first - second));
	} else if (ray[2] > 1e-9) unknown.push(2);

	const hit = hits.sort((a, b) => a.t - b.t)[0];
	if (!hit || unknown.length > 0) return undefined;
	const at = add(start, scale(ray, hit.t));
	return {surface: hit.surface, at, distances: tapeDistances(size, hit.surface, at)};
}

const squares = {
	'wall:front': [0, 1],
	'wall:back': [0, -1],
	'wall:left': [1, 0],
	'wall:right': [-1, 0],
} as const;

/** The wall that a speaker belongs to: side speakers to their side, the rest to the front or the back. */
function wallOf(id: string): Aim['squareTo'] {
	if (/^(SiL|LS|LSd|TpSiL|TpLS)$/.test(id)) return 'wall:left';
	if (/^(SiR|RS|RSd|TpSiR|TpRS)$/.test(id)) return 'wall:right';
	return /^(B|TpB)/.test(id) && !id.startsWith('Bt') ? 'wall:back' : 'wall:front';
}

/**
How to turn and tilt every speaker so that its axis runs through the ear, and where a laser on it must then fall.

@param seat - Id of the seat that the speakers are aimed at.
@returns One aim for each speaker whose place is known; none where the seat's is not.
*/
export function aims({points, room, conventions}: NetworkResult, seat: string): Aim[] {
	const ear = points.find(({id}) => id === seat);
	if (!ear || !isKnown(ear)) return [];
	const hasWalls = conventions.length === 0;
	return points
		.filter(point => point.kind === 'speaker' && isKnown(point))
		.map(({id, at}): Aim => {
			const ray = subtract(ear.at, at);
			const squareTo = wallOf(id);
			const [squareX, squareY] = squares[squareTo];
			const [x, y, z] = ray;
			const across = Math.hypot(x, y);
			const turn = Math.atan2(x * squareY - y * squareX, x * squareX + y * squareY);
			const isAlongX = squareX === 0;
			const towards = isAlongX ? (x > 0 ? 'wall:right' : 'wall:left') : y > 0 ? 'wall:back' : 'wall:front';
			const dot = hasWalls ? firstSurface(room, at, ear.at) : undefined;
			const below: Vector = [at[0], at[1], 0];
			return {
				id,
				seat,
				squareTo,
				toeDegrees: across < 1e-9 ? 0 : Math.abs(turn) * degrees,
				towards,
				tiltDegrees: Math.atan2(z, across) * degrees,
				...(dot && {dot}),
				...(isOverhead(id) &&
					hasWalls && {
						plumb: {
							surface: 'floor' as const,
							at: below,
							distances: tapeDistances(room, 'floor', below),
							offAxisDegrees: Math.atan2(across, -z) * degrees,
						},
					}),
			};
		});
}
