import {ceilingEnds} from '../../profile/ask/ceiling.ts';
import type {PlanScene, RoomPoint} from './scene.ts';

/**
- `above`: x to the right, y down, the screen wall on top.
- `side`: y to the right, z up, the screen wall on the left.
- `behind`: x to the right, z up, as seen from the back wall; for ceilings that fall from left to right.
*/
export type PlanView = 'above' | 'side' | 'behind';

type Flat = readonly [across: number, down: number];

/** Walls, floor and ceiling of one view, and what part of the plane the view shows. Metres, second axis down. */
export type Outline = {
	readonly lines: ReadonlyArray<readonly [Flat, Flat]>;
	readonly left: number;
	readonly top: number;
	readonly width: number;
	readonly height: number;
};

/** Free space around points where no wall is known, metres. */
const marginMetres = 0.4;

/** The elevation that shows the ceiling's slope. */
export function elevationOf(scene: PlanScene): 'side' | 'behind' {
	const {ceiling} = scene.room;
	return ceiling && ceiling.kind !== 'flat' && ceiling.between === 'wall:left-wall:right' ? 'behind' : 'side';
}

/** A place as seen in a view, metres; the second axis runs down. */
export function flatten({x, y, z}: RoomPoint, view: PlanView): Flat {
	if (view === 'above') return [x, y];
	return view === 'side' ? [y, -z] : [x, -z];
}

export function outlineOf(scene: PlanScene, view: PlanView): Outline {
	const {widthMetres, lengthMetres} = scene.room;
	const across = view === 'side' ? lengthMetres : widthMetres;
	const heights = heightsAt(scene, view);
	const lines: Array<readonly [Flat, Flat]> = [];
	const wall = (from: Flat, to: Flat) => lines.push([from, to]);
	if (view === 'above') {
		// Walls that are known only by their place at zero end where the points do.
		const [, , right, bottom] = extent(scene, view, lines);
		const width = widthMetres ?? right;
		const length = lengthMetres ?? bottom;
		const around = floorCorners(scene.room, width, length);
		const isKnown = [true, widthMetres !== undefined, lengthMetres !== undefined, true];
		if (around.length === 4) {
			for (const [i, corner] of around.entries())
				if (isKnown[i]) wall(corner, around[(i + 1) % around.length]!);
		} else for (const [i, corner] of around.entries()) wall(corner, around[(i + 1) % around.length]!);
	} else {
		const [, top, right] = extent(scene, view, lines);
		const width = across ?? right;
		wall([0, 0], [width, 0]);
		wall([0, 0], [0, heights ? -heights[0] : top]);
		if (across !== undefined) wall([width, 0], [width, heights ? -heights[1] : top]);
		const {ceiling} = scene.room;
		const isAcross = elevationOf(scene) === view;
		if (ceiling?.kind === 'broken' && isAcross) {
			for (const [i, {atMetres, heightMetres}] of ceiling.places.slice(1).entries()) {
				const before = ceiling.places[i]!;
				wall([before.atMetres, -before.heightMetres], [atMetres, -heightMetres]);
			}
		} else if (heights) wall([0, -heights[0]], [width, -heights[1]]);
	}

	const [left, top, right, bottom] = extent(scene, view, lines);
	return {lines, left, top, width: right - left, height: bottom - top};
}

/** Corners of the floor, once round from the front left one; six where a corner is missing. */
function floorCorners({missingCorner}: PlanScene['room'], width: number, length: number): Flat[] {
	if (!missingCorner)
		return [
			[0, 0],
			[width, 0],
			[width, length],
			[0, length],
		];
	const {corner, widthMetres: w, lengthMetres: l} = missingCorner;
	const isAt = (one: typeof corner) => one === corner;
	return [
		...(isAt('frontLeft')
			? ([
					[0, l],
					[w, l],
					[w, 0],
				] as const)
			: ([[0, 0]] as const)),
		...(isAt('frontRight')
			? ([
					[width - w, 0],
					[width - w, l],
					[width, l],
				] as const)
			: ([[width, 0]] as const)),
		...(isAt('backRight')
			? ([
					[width, length - l],
					[width - w, length - l],
					[width - w, length],
				] as const)
			: ([[width, length]] as const)),
		...(isAt('backLeft')
			? ([
					[w, length],
					[w, length - l],
					[0, length - l],
				] as const)
			: ([[0, length]] as const)),
	];
}

/** Ceiling heights at the left and right end of an elevation, metres. */
function heightsAt(scene: PlanScene, view: PlanView): readonly [number, number] | undefined {
	const {ceiling} = scene.room;
	if (view === 'above' || !ceiling) return undefined;
	return ceilingEnds(ceiling);
}

function extent(scene: PlanScene, view: PlanView, lines: Outline['lines']): [number, number, number, number] {
	const places = scene.points.map(point => flatten(point, view)).filter(flat => flat.every(Number.isFinite));
	const walls = lines.flat();
	// The corner at the origin and the floor are always there; beyond walls no margin is needed.
	const xs = [0, ...walls.map(([across]) => across)];
	const ys = [0, ...walls.map(([, down]) => down)];
	const beyond = (values: readonly number[], held: readonly number[]): [number, number] => {
		const low = Math.min(...held);
		const high = Math.max(...held);
		const least = Math.min(...values, Infinity);
		const most = Math.max(...values, -Infinity);
		return [least < low ? least - marginMetres : low, most > high ? most + marginMetres : high];
	};

	const [left, right] = beyond(
		places.map(([across]) => across),
		xs,
	);
	const [top, bottom] = beyond(
		places.map(([, down]) => down),
		ys,
	);
	return [left, top, right, bottom];
}
