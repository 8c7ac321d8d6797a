import type {Point} from './physics/box.ts';
import {type MainId, mainIds} from './places.ts';
import {askedLevels, solvedTrims} from './product.ts';
import {beginSession, take, tapeDistances} from './session.ts';
import {isMainId} from './sound.ts';
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
export type TrimError = {readonly errorDb: number; readonly sigmaDb: number; readonly points: number};

/** Where the meter stands for the points that the product asks for: ear, left, right, forward, back. */
const pointsRead = ([x, y, z]: Point): Point[] => [
	[x, y, z],
	[x - 0.3, y, z],
	[x + 0.3, y, z],
	[x, y - 0.3, z],
	[x, y + 0.3, z],
];

/**
Trims after one first round with one reading each, before the receiver's steps.

@param points - How many points around the seat are read of each speaker: 1, 3 or 5.
*/
export function trimErrors(world: World, points: number): TrimError[] {
	const session = beginSession(world);
	tapeDistances(session);
	for (const [index, point] of pointsRead(world.places.seat).slice(0, points).entries()) {
		const asked = askedLevels().filter(({source}) => index === 0 || source.every(isMainId));
		for (const one of asked) take(session, index === 0 ? one : {...one, extra: {point: index + 1}}, {point});
	}

	const trims = solvedTrims(session.profile);
	const sums = mainIds.flatMap(id => {
		const trim = trims.get(id);
		return trim ? [{level: trim.exactDb + heardDb(world, id), sigmaDb: trim.sigmaDb}] : [];
	});
	const mean = sums.reduce((sum, {level}) => sum + level, 0) / sums.length;
	return sums.map(({level, sigmaDb}) => ({errorDb: level - mean, sigmaDb, points}));
}
