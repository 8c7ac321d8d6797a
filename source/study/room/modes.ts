import {crossSectionModes} from '../../science/numeric/crossSectionModes.ts';
import {finished} from '../../science/numeric/finished.ts';
import type {Vector} from '../survey/vectors.ts';
import {prismOf, type RoomShape, volumeOf} from './shape.ts';

/** One standing wave of a room with rigid walls. */
export type RoomMode = {
	readonly frequencyHertz: number;
	/**
	Half waves over width, length and height of a box. In other rooms only those along the axis over which the
	cross-section stays the same are whole numbers; the others are undefined.
	*/
	readonly order: readonly [
		width: number | undefined,
		length: number | undefined,
		height: number | undefined,
	];
	/** Walls it runs between: two (axial), four (tangential), six (oblique); of a room that is no box: undefined. */
	readonly kind: 'axial' | 'tangential' | 'oblique' | undefined;
};

/** Modes of a room up to a frequency, rising, with their shapes. The first is the one at 0 Hz. */
export type RoomModes = {
	readonly modes: readonly RoomMode[];
	/**
	Value of every mode, or of the first so many, at a point, scaled so that its square integrates to 1 over the room,
	m^(−3/2). Undefined outside.
	*/
	readonly at: (point: Vector, most?: number) => Float64Array | undefined;
	readonly volumeCubicMetres: number;
};

const kinds = [undefined, 'axial', 'tangential', 'oblique'] as const;

/** cos(nπ·x/L) scaled so that its square integrates to 1 over the length. */
const cosine = (n: number, x: number, length: number): number =>
	Math.sqrt((n === 0 ? 1 : 2) / length) * Math.cos((n * Math.PI * x) / length);

function boxModes(shape: RoomShape & {kind: 'box'}, topHertz: number, speed: number): RoomModes {
	const sizes = [shape.widthMetres, shape.lengthMetres, shape.heightMetres] as const;
	const counts = sizes.map(size => Math.floor((2 * topHertz * size) / speed));
	const found: Array<RoomMode & {readonly order: readonly [number, number, number]}> = [];
	for (let a = 0; a <= counts[0]!; a++) {
		for (let b = 0; b <= counts[1]!; b++) {
			for (let c = 0; c <= counts[2]!; c++) {
				const frequencyHertz = (speed / 2) * Math.hypot(a / sizes[0], b / sizes[1], c / sizes[2]);
				if (frequencyHertz > topHertz) break;
				const walls = Number(a > 0) + Number(b > 0) + Number(c > 0);
				found.push({frequencyHertz, order: [a, b, c], kind: kinds[walls]});
			}
		}
	}

	found.sort((one, other) => one.frequencyHertz - other.frequencyHertz);
	const orders = Int32Array.from(found.flatMap(({order}) => order));
	return {
		modes: found,
		volumeCubicMetres: volumeOf(shape),
		at([x, y, z], most = found.length) {
			const slack = 1e-6;
			const isIn = [x, y, z].every((value, axis) => value >= -slack && value <= sizes[axis]! + slack);
			if (!isIn) return undefined;
			const tables = [x, y, z].map((value, axis) =>
				Float64Array.from({length: counts[axis]! + 1}, (_, n) => cosine(n, value, sizes[axis]!)),
			);
			const [width, length, height] = tables as [Float64Array, Float64Array, Float64Array];
			const shapes = new Float64Array(Math.min(most, found.length));
			for (let n = 0; n < shapes.length; n++)
				shapes[n] = width[orders[3 * n]!]! * length[orders[3 * n + 1]!]! * height[orders[3 * n + 2]!]!;
			return shapes;
		},
	};
}

function* prismModes(
	shape: Exclude<RoomShape, {kind: 'box'}>,
	topHertz: number,
	speed: number,
): Generator<void, RoomModes> {
	const prism = prismOf(shape);
	const largest = ((2 * Math.PI * topHertz) / speed) ** 2;
	const section = yield* crossSectionModes(prism.strips, largest);
	const found: Array<{frequencyHertz: number; section: number; along: number}> = [];
	for (const [index, eigenvalue] of section.eigenvalues.entries()) {
		for (let along = 0; ; along++) {
			const wave = Math.sqrt(eigenvalue + ((along * Math.PI) / prism.depthMetres) ** 2);
			const frequencyHertz = (speed * wave) / (2 * Math.PI);
			if (frequencyHertz > topHertz) break;
			found.push({frequencyHertz, section: index, along});
		}
	}

	found.sort((one, other) => one.frequencyHertz - other.frequencyHertz);
	const sections = Int32Array.from(found, mode => mode.section);
	const alongs = Int32Array.from(found, mode => mode.along);
	const mostAlong = alongs.reduce((highest, along) => Math.max(highest, along), 0);
	// Waves of the cross-section that the first so many modes of the room need.
	const needed = Int32Array.from(sections);
	for (let n = 1; n < needed.length; n++) needed[n] = Math.max(needed[n]!, needed[n - 1]!);
	const axis = shape.kind === 'corner' ? 2 : shape.across === 0 ? 1 : 0;
	return {
		modes: found.map(({frequencyHertz, along}) => {
			const order: [number | undefined, number | undefined, number | undefined] = [
				undefined,
				undefined,
				undefined,
			];
			order[axis] = along;
			return {frequencyHertz, order, kind: undefined};
		}),
		volumeCubicMetres: volumeOf(shape),
		at(point, most = found.length) {
			const count = Math.min(most, found.length);
			const [u, v, along] = prism.split(point);
			if (along < -1e-6 || along > prism.depthMetres + 1e-6) return undefined;
			const across = section.at(u, v, 1 + (needed[count - 1] ?? 0));
			if (!across) return undefined;
			const waves = Float64Array.from({length: mostAlong + 1}, (_, n) => cosine(n, along, prism.depthMetres));
			const shapes = new Float64Array(count);
			for (let n = 0; n < count; n++) shapes[n] = across[sections[n]!]! * waves[alongs[n]!]!;
			return shapes;
		},
	};
}

/**
Modes of a room with rigid walls: in closed form for a box (Rayleigh), else by spectral elements on the cross-section
times the cosine of the third axis.

@param topHertz - Highest frequency wanted.
@param speedOfSound - Metres per second.
@see Kuttruff, Room Acoustics, 5th ed., section 3.2: eigenvalues and eigenfunctions of rectangular rooms.
*/
export function roomModes(shape: RoomShape, topHertz: number, speedOfSound: number): RoomModes {
	return finished(roomModesInSteps(shape, topHertz, speedOfSound));
}

/** The same in small steps: it yields every few milliseconds. */
export function* roomModesInSteps(
	shape: RoomShape,
	topHertz: number,
	speedOfSound: number,
): Generator<void, RoomModes> {
	return shape.kind === 'box'
		? boxModes(shape, topHertz, speedOfSound)
		: yield* prismModes(shape, topHertz, speedOfSound);
}
