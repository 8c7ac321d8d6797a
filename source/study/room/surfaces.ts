import type {Plane} from '../../profile/types.ts';
import {cross, length, scale, subtract, type Vector} from '../survey/vectors.ts';
import type {RoomShape} from './shape.ts';

/** One flat surface of the room. */
export type RoomSurface = {
	/** The plane it belongs to; the two walls of a missing corner are `wall:inner-x` and `wall:inner-y`. */
	readonly plane: Plane | 'wall:inner-x' | 'wall:inner-y';
	/** Pieces of one plane are numbered from 0: a broken ceiling has several. */
	readonly piece: number;
	/** Corners of the surface, in order around it, metres. */
	readonly corners: readonly Vector[];
	/** Unit vector into the room. */
	readonly normal: Vector;
	readonly squareMetres: number;
};

/** Surface through corners that lie in one plane; the normal is turned to look at a point inside. */
function surface(
	plane: RoomSurface['plane'],
	piece: number,
	corners: readonly Vector[],
	inside: Vector,
): RoomSurface {
	let whole: Vector = [0, 0, 0];
	for (let i = 1; i + 1 < corners.length; i++) {
		const part = cross(subtract(corners[i]!, corners[0]!), subtract(corners[i + 1]!, corners[0]!));
		whole = [whole[0] + part[0], whole[1] + part[1], whole[2] + part[2]];
	}

	const size = length(whole);
	const toInside = subtract(inside, corners[0]!);
	const side = whole[0] * toInside[0] + whole[1] * toInside[1] + whole[2] * toInside[2] < 0 ? -1 : 1;
	return {plane, piece, corners, normal: scale(whole, side / size), squareMetres: size / 2};
}

/** Corners of the floor in order around it, with the wall from each corner to the next. */
function floorPlan(
	shape: RoomShape,
): Array<{readonly at: readonly [x: number, y: number]; readonly wall: RoomSurface['plane']}> {
	const {widthMetres: w, lengthMetres: l} = shape;
	const plain = [
		{at: [0, 0], wall: 'wall:front'},
		{at: [w, 0], wall: 'wall:right'},
		{at: [w, l], wall: 'wall:back'},
		{at: [0, l], wall: 'wall:left'},
	] as const;
	if (shape.kind !== 'corner') return [...plain];
	const {corner, widthMetres: a, lengthMetres: b} = shape.missing;
	const x = 'wall:inner-x';
	const y = 'wall:inner-y';
	switch (corner) {
		case 'frontLeft':
			return [
				{at: [a, 0], wall: 'wall:front'},
				plain[1],
				plain[2],
				{at: [0, l], wall: 'wall:left'},
				{at: [0, b], wall: y},
				{at: [a, b], wall: x},
			];
		case 'frontRight':
			return [
				plain[0],
				{at: [w - a, 0], wall: x},
				{at: [w - a, b], wall: y},
				{at: [w, b], wall: 'wall:right'},
				plain[2],
				plain[3],
			];
		case 'backRight':
			return [
				plain[0],
				plain[1],
				{at: [w, l - b], wall: y},
				{at: [w - a, l - b], wall: x},
				{at: [w - a, l], wall: 'wall:back'},
				plain[3],
			];
		default:
			return [
				plain[0],
				plain[1],
				plain[2],
				{at: [a, l], wall: x},
				{at: [a, l - b], wall: y},
				{at: [0, l - b], wall: 'wall:left'},
			];
	}
}

/** Every flat surface of the room: floor, walls, and the pieces of the ceiling. */
export function surfacesOf(shape: RoomShape): RoomSurface[] {
	const plan = floorPlan(shape);
	// A point a little off the floor's first wall and above the floor is inside every room that has a height there.
	const places =
		shape.kind === 'ceiling'
			? shape.places
			: [
					{atMetres: 0, heightMetres: shape.heightMetres},
					{atMetres: shape.widthMetres, heightMetres: shape.heightMetres},
				];
	const across = shape.kind === 'ceiling' ? shape.across : 0;
	const top = (x: number, y: number): number => {
		const at = across === 0 ? x : y;
		const index = Math.max(
			1,
			places.findIndex(place => place.atMetres >= at - 1e-9),
		);
		const [before, after] = [places[index - 1]!, places[index]!];
		const share = (at - before.atMetres) / (after.atMetres - before.atMetres);
		return before.heightMetres + (after.heightMetres - before.heightMetres) * share;
	};
	const inside = insidePoint(shape, top);
	const found: RoomSurface[] = [
		surface(
			'floor',
			0,
			plan.map(({at}): Vector => [...at, 0]),
			inside,
		),
	];
	for (const [i, {at, wall}] of plan.entries()) {
		const next = plan[(i + 1) % plan.length]!.at;
		const runsAcross = across === 0 ? at[0] !== next[0] : at[1] !== next[1];
		// Where the ceiling changes along this wall, its top edge follows.
		const between = runsAcross
			? places
					.filter(({atMetres}) => {
						const [from, to] = [at[across], next[across]].sort((one, other) => one - other) as [
							number,
							number,
						];
						return atMetres > from + 1e-9 && atMetres < to - 1e-9;
					})
					.map(({atMetres}) => (across === 0 ? ([atMetres, at[1]] as const) : ([at[0], atMetres] as const)))
			: [];
		if (next[across] > at[across]) between.reverse();
		const edge = [next, ...between, at];
		const corners: Vector[] = [[...at, 0], [...next, 0], ...edge.map(([x, y]): Vector => [x, y, top(x, y)])];
		found.push(surface(wall, 0, corners, inside));
	}

	if (shape.kind !== 'ceiling')
		found.push(
			surface(
				'ceiling',
				0,
				plan.map(({at}): Vector => [...at, shape.heightMetres]),
				inside,
			),
		);
	else {
		const depth = across === 0 ? shape.lengthMetres : shape.widthMetres;
		for (const [i, after] of places.slice(1).entries()) {
			const before = places[i]!;
			const corner = (place: typeof after, along: number): Vector =>
				across === 0
					? [place.atMetres, along, place.heightMetres]
					: [along, place.atMetres, place.heightMetres];
			found.push(
				surface(
					'ceiling',
					i,
					[corner(before, 0), corner(after, 0), corner(after, depth), corner(before, depth)],
					inside,
				),
			);
		}
	}

	return found.filter(({squareMetres}) => squareMetres > 0);
}

function insidePoint(shape: RoomShape, top: (x: number, y: number) => number): Vector {
	const {widthMetres: w, lengthMetres: l} = shape;
	if (shape.kind !== 'corner') return [w / 2, l / 2, top(w / 2, l / 2) / 2];
	// The corner opposite to the missing one is there in any case.
	const {corner} = shape.missing;
	const x = corner === 'frontLeft' || corner === 'backLeft' ? w - 0.01 : 0.01;
	const y = corner === 'frontLeft' || corner === 'frontRight' ? l - 0.01 : 0.01;
	return [x, y, shape.heightMetres / 2];
}
