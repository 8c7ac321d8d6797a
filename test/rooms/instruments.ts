import type {BoxesState} from './boxes.ts';
import type {Point} from './physics/box.ts';
import type {Draws} from './physics/random.ts';
import {noiseLevel, type Playing, toneLevel, type Weighting} from './sound.ts';
import type {World} from './world.ts';

/** Standard deviation of one reading of the meter, dB. */
export const meterSigmaDb = 0.5;

export type Sounded =
	| {readonly kind: 'pink'; readonly fromHertz: number; readonly toHertz: number}
	| {readonly kind: 'tone'; readonly hertz: number};

/** The level that is really there, C-weighted unless told otherwise, dB. */
export function trueLevel(
	world: World,
	boxes: BoxesState,
	playing: Playing,
	signal: Sounded,
	point: Point = world.places.seat,
	weighting: Weighting = 'C',
): number {
	return signal.kind === 'tone'
		? toneLevel(world, boxes, playing, signal.hertz, point, weighting)
		: noiseLevel(world, boxes, playing, [signal.fromHertz, signal.toHertz], point, weighting);
}

/** One reading of the meter: C, its own scatter, shown to a tenth of a decibel. */
export function readMeter(
	world: World,
	boxes: BoxesState,
	playing: Playing,
	signal: Sounded,
	draws: Draws,
	point: Point = world.places.seat,
): number {
	const level = trueLevel(world, boxes, playing, signal, point) + draws.gauss(meterSigmaDb);
	// Nothing reads below the noise of a quiet house.
	return Math.round(Math.max(25, level) * 10) / 10;
}

/** A place some way off the ear in a random direction: nobody puts a meter back to the millimetre. */
export function besideSeat(world: World, metres: number, draws: Draws): Point {
	const direction = [draws.gauss(1), draws.gauss(1), draws.gauss(1)] as const;
	const length = Math.hypot(...direction);
	return world.places.seat.map(
		(value, axis) => value + (metres * direction[axis]!) / length,
	) as unknown as Point;
}

/** How well the ends of a tape are held, one standard deviation of each coordinate, metres. */
export type Holding = {readonly seat: number; readonly speaker: number; readonly wall: number};
export const heldExactly: Holding = {seat: 0, speaker: 0, wall: 0};

/** Reads a tape between two points: what it shows with its own scatter, to the millimetre. */
export function readTape(metres: number, draws: Draws, sigmaMetres = 0.005): number {
	return Math.round((metres + draws.gauss(sigmaMetres)) * 1000) / 1000;
}

/**
Length between two ends as they are held: each end of a reading is off by itself.

@param isWall - A plane is held in one direction only.
*/
export function heldLength(
	world: Pick<World, 'places' | 'sizeMetres'>,
	from: string,
	to: string,
	holding: Holding,
	draws: Draws,
): number {
	const at = (end: string): Point | undefined => {
		const {at: sources, seat, screen} = world.places;
		const place = end === 'seat1' ? seat : end === 'screen' ? screen : sources[end as keyof typeof sources];
		const sigma = end === 'seat1' ? holding.seat : holding.speaker;
		return place?.map(value => value + draws.gauss(sigma)) as unknown as Point | undefined;
	};
	const plane = (end: string): readonly [axis: number, at: number] => {
		const [width, length, height] = world.sizeMetres;
		const off = draws.gauss(holding.wall);
		const planes: Record<string, readonly [number, number]> = {
			'wall:left': [0, off],
			'wall:right': [0, width + off],
			'wall:front': [1, off],
			'wall:back': [1, length + off],
			floor: [2, off],
			ceiling: [2, height + off],
		};
		const found = planes[end];
		if (!found) throw new RangeError(`no end of a tape here: ${end}`);
		return found;
	};
	const [a, b] = [at(from), at(to)];
	if (a && b) return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
	if (a || b) {
		const [axis, where] = plane(a ? to : from);
		return Math.abs((a ?? b)![axis]! - where);
	}

	const [first, second] = [plane(from), plane(to)];
	return Math.abs(first[1] - second[1]);
}
