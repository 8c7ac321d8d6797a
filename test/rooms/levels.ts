import type {Point} from './physics/box.ts';
import {type MainId, mainIds} from './places.ts';
import {askedLevels, solvedTrims} from './product.ts';
import {beginSession, take, tapeDistances} from './session.ts';
import type {World} from './world.ts';

/** The ear and places up to 30 cm to its sides, before and behind it: what a seat hears. */
function pointsOfSeat([x, y, z]: Point): Point[] {
	const steps = [-0.3, -0.12, 0.12, 0.3];
	return [
		[x, y, z],
		...steps.map((step): Point => [x + step, y, z]),
		...steps.map((step): Point => [x, y + step, z]),
	];
}

/** Mean power of pink noise from 250 to 8000 Hz over the points of the seat, dB. */
function heardDb(world: World, id: MainId): number {
	const points = pointsOfSeat(world.places.seat);
	let energy = 0;
	let norm = 0;
	for (const point of points) {
		const {hertz, power} = world.acoustics.treble(id, point, [250, 8000]);
		for (const [index, frequency] of hertz.entries()) {
			energy += power[index]! / frequency;
			norm += 1 / frequency;
		}
	}

	return 10 * Math.log10(energy / norm) + world.gear.mains[id].levelDb;
}

/** A trim against what the seat hears, both against the mean of all channels, dB. */
export type TrimError = {readonly errorDb: number; readonly sigmaDb: number};

/** Trims after one first round with one reading each, before the receiver's steps. */
export function trimErrors(world: World): TrimError[] {
	const session = beginSession(world);
	tapeDistances(session);
	for (const asked of askedLevels()) take(session, asked);
	const trims = solvedTrims(session.profile);
	const sums = mainIds.flatMap(id => {
		const trim = trims.get(id);
		return trim ? [{level: trim.exactDb + heardDb(world, id), sigmaDb: trim.sigmaDb}] : [];
	});
	const mean = sums.reduce((sum, {level}) => sum + level, 0) / sums.length;
	return sums.map(({level, sigmaDb}) => ({errorDb: level - mean, sigmaDb}));
}
