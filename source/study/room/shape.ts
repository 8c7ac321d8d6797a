import type {Strip} from '../../science/numeric/crossSectionModes.ts';
import type {Vector} from '../survey/vectors.ts';

/** Height of a ceiling at one place along the axis across which it changes, metres. */
export type CeilingPlace = {readonly atMetres: number; readonly heightMetres: number};

/** A corner of the floor plan, seen from the seat facing the screen. */
export type Corner = 'frontLeft' | 'frontRight' | 'backLeft' | 'backRight';

/**
The shapes of room whose modes are computed. x runs to the right over the width, y from the screen wall to the back over
the length, z up.
*/
export type RoomShape =
	| {
			readonly kind: 'box';
			readonly widthMetres: number;
			readonly lengthMetres: number;
			readonly heightMetres: number;
	  }
	| {
			/** A ceiling that changes along one axis and is the same along the other: sloped, gabled, broken. */
			readonly kind: 'ceiling';
			readonly widthMetres: number;
			readonly lengthMetres: number;
			/** 0: heights change over the width, 1: over the length. */
			readonly across: 0 | 1;
			/** Two to eight places, rising, the first at 0 and the last at the far wall. */
			readonly places: readonly CeilingPlace[];
	  }
	| {
			/** A box of which one corner is missing, under a flat ceiling. */
			readonly kind: 'corner';
			readonly widthMetres: number;
			readonly lengthMetres: number;
			readonly heightMetres: number;
			readonly missing: {
				readonly corner: Corner;
				readonly widthMetres: number;
				readonly lengthMetres: number;
			};
	  };

/** A prism: a cross-section of strips, drawn out along the third axis. */
export type Prism = {
	readonly strips: readonly Strip[];
	readonly depthMetres: number;
	/** Coordinates of a point in the cross-section, and along the third axis. */
	readonly split: (point: Vector) => readonly [u: number, v: number, along: number];
};

/** The shape as a prism: ceilings are drawn out along the axis over which they stay the same, other rooms upwards. */
export function prismOf(shape: RoomShape): Prism {
	if (shape.kind === 'ceiling') {
		const {across, places} = shape;
		return {
			strips: places.slice(1).map((place, i) => ({
				from: places[i]!.atMetres,
				to: place.atMetres,
				low: 0,
				topAtFrom: places[i]!.heightMetres,
				topAtTo: place.heightMetres,
			})),
			depthMetres: across === 0 ? shape.lengthMetres : shape.widthMetres,
			split: ([x, y, z]) => (across === 0 ? [x, z, y] : [y, z, x]),
		};
	}

	const {widthMetres: width, lengthMetres: length} = shape;
	const rectangle = (from: number, to: number, low: number, top: number): Strip => ({
		from,
		to,
		low,
		topAtFrom: top,
		topAtTo: top,
	});
	const upwards = {depthMetres: shape.heightMetres, split: (point: Vector) => point};
	if (shape.kind === 'box') return {...upwards, strips: [rectangle(0, width, 0, length)]};

	const {corner, widthMetres, lengthMetres} = shape.missing;
	const isLeft = corner === 'frontLeft' || corner === 'backLeft';
	const isFront = corner === 'frontLeft' || corner === 'frontRight';
	const middle = isLeft ? widthMetres : width - widthMetres;
	const break_ = isFront ? lengthMetres : length - lengthMetres;
	type Span = readonly [from: number, to: number];
	const [narrow, wide]: readonly [Span, Span] = isLeft
		? [
				[0, middle],
				[middle, width],
			]
		: [
				[middle, width],
				[0, middle],
			];
	return {
		...upwards,
		strips: [
			rectangle(...wide, 0, break_),
			rectangle(...wide, break_, length),
			isFront ? rectangle(...narrow, break_, length) : rectangle(...narrow, 0, break_),
		],
	};
}

function areaOf({strips}: Prism): number {
	return strips.reduce(
		(sum, {from, to, low, topAtFrom, topAtTo}) => sum + (to - from) * ((topAtFrom + topAtTo) / 2 - low),
		0,
	);
}

/** Volume of the room, cubic metres. */
export function volumeOf(shape: RoomShape): number {
	const prism = prismOf(shape);
	return areaOf(prism) * prism.depthMetres;
}

/** Whether points lie in a room, walls included: for many points of one room. */
export function insideOf(shape: RoomShape): (point: Vector) => boolean {
	const {strips, depthMetres, split} = prismOf(shape);
	// A millimetre of a millimetre: points are put on walls by arithmetic.
	const slack = 1e-6;
	return point => {
		const [u, v, along] = split(point);
		if (along < -slack || along > depthMetres + slack) return false;
		for (const {from, to, low, topAtFrom, topAtTo} of strips) {
			if (u < from - slack || u > to + slack || v < low - slack) continue;
			if (v <= topAtFrom + ((topAtTo - topAtFrom) * (u - from)) / (to - from) + slack) return true;
		}

		return false;
	};
}

/** Whether a point lies in the room, walls included. */
export const isInside = (shape: RoomShape, point: Vector): boolean => insideOf(shape)(point);

/** What is wrong with a shape: which size, its value in metres, and the bounds that hold. */
export type ShapeFault = {
	readonly size: 'width' | 'length' | 'height' | 'places' | 'missingWidth' | 'missingLength';
	readonly metres: number;
	readonly leastMetres: number;
	readonly mostMetres: number;
};

/** Sizes within which a room is taken for one, metres: a cupboard and a hall. Judgement, no source. */
export const roomBoundsMetres = {least: 1, most: 40, leastHeight: 1.2, mostHeight: 12} as const;

/** Everything about the sizes that no room to sit in has; empty where all is well. */
export function shapeFaults(shape: RoomShape): ShapeFault[] {
	const {least, most, leastHeight, mostHeight} = roomBoundsMetres;
	const faults: ShapeFault[] = [];
	const hold = (size: ShapeFault['size'], metres: number, leastMetres: number, mostMetres: number) => {
		if (!(metres >= leastMetres && metres <= mostMetres))
			faults.push({size, metres, leastMetres, mostMetres});
	};

	hold('width', shape.widthMetres, least, most);
	hold('length', shape.lengthMetres, least, most);
	if (shape.kind === 'ceiling') {
		const across = shape.across === 0 ? shape.widthMetres : shape.lengthMetres;
		hold('height', Math.max(...shape.places.map(place => place.heightMetres)), leastHeight, mostHeight);
		for (const {heightMetres} of shape.places) hold('height', heightMetres, 0, mostHeight);
		for (const [i, {atMetres}] of shape.places.entries()) {
			const before = shape.places[i - 1]?.atMetres;
			// Places rise from one wall to the other, a hand's width apart at the least.
			hold('places', atMetres, before === undefined ? 0 : before + 0.05, before === undefined ? 0 : across);
		}

		const last = shape.places.at(-1)?.atMetres ?? 0;
		if (Math.abs(last - across) > 1e-6) hold('places', last, across, across);
	} else hold('height', shape.heightMetres, leastHeight, mostHeight);
	if (shape.kind === 'corner') {
		hold('missingWidth', shape.missing.widthMetres, 0.05, shape.widthMetres - 0.5);
		hold('missingLength', shape.missing.lengthMetres, 0.05, shape.lengthMetres - 0.5);
	}

	return faults;
}
