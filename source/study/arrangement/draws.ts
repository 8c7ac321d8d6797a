import {finished} from '../../science/numeric/finished.ts';
import {normalRandom} from '../../science/numeric/normalRandom.ts';
import {seededRandom} from '../../science/signal/seededRandom.ts';
import type {ModeChange} from '../room/modalResponse.ts';
import {type RoomMode, type RoomModes, roomModesInSteps} from '../room/modes.ts';
import type {RoomInputs} from '../room/roomStudy.ts';
import {insideOf} from '../room/shape.ts';
import type {Vector} from '../survey/vectors.ts';
import {type BassWeights, bassWeights} from './bassWeights.ts';

/**
How wrong the model may be, and by how much each draw is: sizes as a tape and walls that give leave them, places as feet
leave them, modes as doors and furniture shift them. Judgement, tried in simulated rooms.
*/
export const drawSpreads = {
	sizeShare: 0.015,
	placeMetres: 0.03,
	modeShare: 0.02,
	dampingLog: 0.3,
	decaySeconds: {least: 0.25, most: 0.65},
	/** A decay that was recorded or stated is known to about this share. */
	knownDecayShare: 0.15,
} as const;

/** How many draws judge every arrangement, and which of them, sorted from good to bad, stands for the bad case. */
export const drawCount = 20;
export const badCase = 17;
/**
Waves are summed up to here, hertz, although arrangements are judged to 120 Hz only: the tails of what lies higher are
what is left of the direct sound near a sub. Elements on an L cost most, so that fewer are taken there.
*/
const summedToHertz = {box: 300, ceiling: 300, corner: 200} as const;

/** One room that the real one might be. */
export type RoomDraw = {
	readonly weights: BassWeights;
	/** Shapes of the modes at a place of the model; `thing` numbers it, so that its error is its own. */
	readonly at: (point: Vector, thing: number) => Float64Array;
};

/** A stream of random numbers of its own for every pair of numbers, whatever the order they are asked in. */
function stream(draw: number, thing: number): () => number {
	const uniform = seededRandom(1 + draw * 7_368_787 + thing * 104_729);
	// Seeds that differ little begin alike.
	for (let i = 0; i < 8; i++) uniform();
	return uniform;
}

/** The frequencies that count in a box whose sizes are wrong by factors; of other rooms, by their mean. */
function sizeFactor({order, kind}: RoomMode, factors: Vector, isBox: boolean, sizes: Vector): number {
	if (!isBox || kind === undefined) return 3 / (factors[0] + factors[1] + factors[2]);
	const waves = order.map((count, axis) => (count ?? 0) / sizes[axis]!);
	const changed = waves.map((wave, axis) => wave / factors[axis]!);
	return Math.hypot(...changed) / Math.hypot(...waves);
}

/** The modes that all draws vary. A generator: it yields every few milliseconds. */
export const drawnModes = ({
	shape,
	speedOfSound,
}: Pick<RoomInputs, 'shape' | 'speedOfSound'>): Generator<void, RoomModes> =>
	roomModesInSteps(shape, summedToHertz[shape.kind], speedOfSound);

/** The modes up to a frequency alone, for a first look. */
export function modesUpTo({modes, at, ...rest}: RoomModes, topHertz: number): RoomModes {
	const count = modes.filter(({frequencyHertz}) => frequencyHertz <= topHertz).length;
	return {...rest, modes: modes.slice(0, count), at: point => at(point, count)};
}

/**
How fast each wave of a box dies away against their mean: walls that it runs along take half of what those take that it
meets. Waves of other rooms are taken as alike.

@see Morse and Bolt, Sound waves in rooms, Reviews of Modern Physics 16 (1944), 69; from memory: εₙ = 1 for n = 0, else 2.
*/
function wallDamping(modes: readonly RoomMode[], isBox: boolean, sizes: Vector): number[] {
	if (!isBox) return modes.map(() => 1);
	const shares = modes.map(({order}) =>
		order.reduce<number>((sum, count, axis) => sum + (count === 0 ? 1 : 2) / sizes[axis]!, 0),
	);
	const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
	return shares.map(share => share / mean);
}

/** The sizes of a room along its axes; a ceiling that changes counts as a metre, since only factors matter there. */
const sizesOf = (shape: RoomInputs['shape']): Vector => [
	shape.widthMetres,
	shape.lengthMetres,
	shape.kind === 'box' ? shape.heightMetres : 1,
];

/**
The rooms that the real one might be, the same for every arrangement that is judged, so that two of them differ by
themselves alone. A generator: it yields after each.

@param frequenciesHertz - Where responses are wanted.
@param modes - The modes of the room.
@param count - How many; fewer for a first look.
*/
export function* roomDrawsInSteps(
	{shape, decay, speedOfSound}: Pick<RoomInputs, 'shape' | 'decay' | 'speedOfSound'>,
	frequenciesHertz: readonly number[],
	modes: RoomModes,
	count: number = drawCount,
): Generator<void, RoomDraw[]> {
	const isBox = shape.kind === 'box';
	const sizes = sizesOf(shape);
	const isInside = insideOf(shape);
	const walls = wallDamping(modes.modes, isBox, sizes);
	const found: RoomDraw[] = [];
	for (let draw = 0; draw < count; draw++) {
		const uniform = stream(draw, 0);
		const normal = normalRandom(uniform);
		const factors = [0, 1, 2].map(() => 1 + drawSpreads.sizeShare * normal()) as unknown as Vector;
		const {least, most} = drawSpreads.decaySeconds;
		const share = uniform();
		const seconds =
			decay.from === 'estimated'
				? least + (most - least) * share
				: decay.seconds * Math.exp(drawSpreads.knownDecayShare * normal());
		const changes = modes.modes.map(
			(mode, n): ModeChange => ({
				frequency: sizeFactor(mode, factors, isBox, sizes) * (1 + drawSpreads.modeShare * normal()),
				damping: walls[n]! * Math.exp(drawSpreads.dampingLog * normal()),
			}),
		);
		found.push({
			weights: bassWeights(modes, frequenciesHertz, seconds, speedOfSound, n => changes[n]!),
			at: (point, thing) =>
				shapesNear(modes, isInside, point, factors, normalRandom(stream(draw, thing + 1))),
		});
		yield;
	}

	return found;
}

/** All draws at once, with the modes of the room. */
export function roomDraws(
	room: Pick<RoomInputs, 'shape' | 'decay' | 'speedOfSound'>,
	frequenciesHertz: readonly number[],
	count: number = drawCount,
): RoomDraw[] {
	return finished(roomDrawsInSteps(room, frequenciesHertz, finished(drawnModes(room)), count));
}

/** Shapes at a place that is a little off; where that falls outside, at the place itself. */
function shapesNear(
	modes: RoomModes,
	isInside: (point: Vector) => boolean,
	point: Vector,
	factors: Vector,
	normal: () => number,
): Float64Array {
	const [x, y, z] = point;
	const off = (value: number, axis: 0 | 1 | 2) =>
		(value + drawSpreads.placeMetres * normal()) / factors[axis];
	const near: Vector = [off(x, 0), off(y, 1), off(z, 2)];
	return modes.at(isInside(near) ? near : point)!;
}

/** The draw with the shapes at places kept that were asked for already: rows and places come again and again in a search. */
export function keepingShapes(draw: RoomDraw, most: number): RoomDraw {
	const kept = new Map<string, Float64Array>();
	return {
		...draw,
		at(point, thing) {
			const key = `${thing} ${point[0]} ${point[1]} ${point[2]}`;
			const known = kept.get(key);
			if (known) return known;
			if (kept.size >= most) kept.clear();
			const shape = draw.at(point, thing);
			kept.set(key, shape);
			return shape;
		},
	};
}
