import {normalRandom} from '../../science/numeric/normalRandom.ts';
import {seededRandom} from '../../science/signal/seededRandom.ts';
import {type ModalWeights, type ModeChange, modalWeights} from '../room/modalResponse.ts';
import {type RoomMode, type RoomModes, roomModes} from '../room/modes.ts';
import type {RoomInputs} from '../room/roomStudy.ts';
import {isInside} from '../room/shape.ts';
import type {Vector} from '../survey/vectors.ts';

/**
How wrong the model may be, and by how much each draw is: sizes as a tape and walls that give leave them, places as feet
leave them, modes as doors and furniture shift them. Judgement, tried in simulated rooms.
*/
export const drawSpreads = {
	sizeShare: 0.015,
	placeMetres: 0.05,
	modeShare: 0.03,
	dampingLog: 0.4,
	decaySeconds: {least: 0.25, most: 0.65},
	/** A decay that was recorded or stated is known to about this share. */
	knownDecayShare: 0.15,
} as const;

/** How many draws judge every arrangement, and which of them, sorted from good to bad, stands for the bad case. */
export const drawCount = 20;
export const badCase = 17;

/** One room that the real one might be. */
export type RoomDraw = {
	readonly weights: ModalWeights;
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

/**
The rooms that the real one might be, the same for every arrangement that is judged, so that two of them differ by
themselves alone.

@param frequenciesHertz - Where responses are wanted.
@param count - How many; fewer for a first look.
*/
export function roomDraws(
	{shape, decay, speedOfSound}: Pick<RoomInputs, 'shape' | 'decay' | 'speedOfSound'>,
	frequenciesHertz: readonly number[],
	count: number = drawCount,
): RoomDraw[] {
	// What lies above the highest frequency asked for by two thirds adds smoothly.
	const modes = roomModes(shape, Math.max(...frequenciesHertz) * (5 / 3), speedOfSound);
	const isBox = shape.kind === 'box';
	const height = isBox ? shape.heightMetres : 1;
	const sizes: Vector = [shape.widthMetres, shape.lengthMetres, height];
	return Array.from({length: count}, (_, draw) => {
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
			(mode): ModeChange => ({
				frequency: sizeFactor(mode, factors, isBox, sizes) * (1 + drawSpreads.modeShare * normal()),
				damping: Math.exp(drawSpreads.dampingLog * normal()),
			}),
		);
		return {
			weights: modalWeights(modes, frequenciesHertz, seconds, speedOfSound, n => changes[n]!),
			at: (point, thing) => shapesNear(modes, shape, point, factors, normalRandom(stream(draw, thing + 1))),
		};
	});
}

/** Shapes at a place that is a little off; where that falls outside, at the place itself. */
function shapesNear(
	modes: RoomModes,
	shape: RoomInputs['shape'],
	point: Vector,
	factors: Vector,
	normal: () => number,
): Float64Array {
	const near = point.map(
		(value, axis) => (value + drawSpreads.placeMetres * normal()) / factors[axis]!,
	) as unknown as Vector;
	return modes.at(isInside(shape, near) ? near : point)!;
}
