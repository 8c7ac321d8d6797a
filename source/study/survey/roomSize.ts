import type {Profile} from '../../profile/types.ts';
import type {Vector} from './vectors.ts';

/** Height of a ceiling that changes between two opposite walls. */
export type Slope = {
	/** 0: from the left wall to the right; 1: from the front wall to the back. */
	readonly axis: 0 | 1;
	readonly heightsMetres: readonly [first: number, second: number];
};

/** The room's box. A dimension is absent where nothing tells it. */
export type RoomSize = {
	readonly widthMetres?: number;
	readonly lengthMetres?: number;
	readonly ceiling?: {readonly heightMetres: number} | Slope;
};

/** The slope of the ceiling that a profile states, if it states one. */
export function slopeOf({ceiling}: Profile['room']): Slope | undefined {
	if (ceiling?.kind !== 'sloped') return undefined;
	return {
		axis: ceiling.between === 'wall:left-wall:right' ? 0 : 1,
		heightsMetres: ceiling.heightsMetres,
	};
}

/** A ceiling of several heights between two opposite walls, each at its place along the axis. */
export type BrokenCeiling = {
	/** 0: from the left wall to the right; 1: from the front wall to the back. */
	readonly axis: 0 | 1;
	readonly places: ReadonlyArray<{readonly atMetres: number; readonly heightMetres: number}>;
};

/** The broken ceiling that a profile states, if it states one. */
export function brokenCeilingOf({ceiling}: Profile['room']): BrokenCeiling | undefined {
	if (ceiling?.kind !== 'broken') return undefined;
	return {axis: ceiling.between === 'wall:left-wall:right' ? 0 : 1, places: ceiling.places};
}

/** Height of the ceiling above a place on the floor, metres; undefined where it is not known. */
export function ceilingHeightAt(size: RoomSize, x: number, y: number): number | undefined {
	const {ceiling} = size;
	if (!ceiling) return undefined;
	if ('heightMetres' in ceiling) return ceiling.heightMetres;
	const across = ceiling.axis === 0 ? size.widthMetres : size.lengthMetres;
	if (across === undefined) return undefined;
	const [first, second] = ceiling.heightsMetres;
	return first + ((second - first) * (ceiling.axis === 0 ? x : y)) / across;
}

/** How far a point is outside the room's box, metres; 0 inside, and where the walls are not known. */
export function outsideBy(size: RoomSize, [x, y, z]: Vector): number {
	const top = ceilingHeightAt(size, x, y);
	return Math.max(
		0,
		-x,
		-y,
		-z,
		size.widthMetres === undefined ? 0 : x - size.widthMetres,
		size.lengthMetres === undefined ? 0 : y - size.lengthMetres,
		top === undefined ? 0 : z - top,
	);
}
