import type {BoxesState} from './boxes.ts';
import {magnitudeAt} from './physics/spectrum.ts';
import {type MainId, subIds} from './places.ts';
import {bassHertz} from './roomSound.ts';
import {arriving, soundOf} from './sound.ts';
import type {World} from './world.ts';

/**
What phases cost a channel through its crossover: mean over fc/2 to 2fc (in log f) of
20·lg((|main| + |sub 1| + |sub 2|) / |sum|) at the ear, dB.
*/
export function lossOf(
	world: World,
	boxes: BoxesState,
	id: MainId | 'LFE1',
	band?: readonly [number, number],
): number {
	const point = world.places.seat;
	const sources = id === 'LFE1' ? subIds : ([id, ...subIds] as const);
	const parts = sources.flatMap(source => arriving(world, boxes, id, source, point) ?? []);
	const sum = soundOf(world, boxes, {into: [id], on: sources}, id, point);
	const crossover = id === 'LFE1' ? 80 : boxes.channels[id]?.crossoverHertz;
	const centre = typeof crossover === 'number' ? crossover : 80;
	const [from, to] = band ?? [centre / 2, Math.min(500, 2 * centre)];
	let weights = 0;
	let loss = 0;
	for (const [index, hertz] of bassHertz.entries()) {
		if (hertz < from || hertz > to) continue;
		const best = parts.reduce((total, part) => total + magnitudeAt(part, index), 0);
		weights += 1 / hertz;
		loss += (20 * Math.log10(best / magnitudeAt(sum, index))) / hertz;
	}

	return loss / weights;
}

/** Loss of the centre and the mean of the three fronts, dB. */
export type Losses = {readonly FC: number; readonly fronts: number};

export function lossesOf(world: World, boxes: BoxesState): Losses {
	const [FL, FC, FR] = (['FL', 'FC', 'FR'] as const).map(id => lossOf(world, boxes, id)) as [
		number,
		number,
		number,
	];
	return {FC, fronts: (FL + FC + FR) / 3};
}
