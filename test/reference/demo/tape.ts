import type {TapeReading} from '../../../source/profile/types.ts';
import type {Random} from './random.ts';
import type {Point, Truth} from './truth.ts';

export function distanceMetres(from: Point, to: Point): number {
	return Math.hypot(from[0] - to[0], from[1] - to[1], from[2] - to[2]);
}

/** Perpendicular distance from a point to a plane of the room, metres. */
export function toPlaneMetres([x, y, z]: Point, plane: string, truth: Truth): number {
	const {widthMetres, lengthMetres, ceilingMetres} = truth;
	const slope = (ceilingMetres[1] - ceilingMetres[0]) / widthMetres;
	const distances: Readonly<Record<string, number>> = {
		'wall:left': x,
		'wall:right': widthMetres - x,
		'wall:front': y,
		'wall:back': lengthMetres - y,
		floor: z,
		ceiling: (ceilingMetres[0] + slope * x - z) / Math.hypot(1, slope),
	};
	return distances[plane]!;
}

/** Every true point by its tape end. */
export function truePoints({seats, speakers, subs, screen}: Truth): Readonly<Record<string, Point>> {
	return {
		...seats,
		...Object.fromEntries(Object.entries({...speakers, ...subs}).map(([id, {at}]) => [id, at])),
		screen,
	};
}

/** What a tape says: true length, 2 mm and 1 mm a metre as standard deviations, read to the millimetre. */
function taken(metres: number, {normal}: Random): number {
	return Math.round((metres + Math.hypot(0.002, 0.001 * metres) * normal()) * 1000) / 1000;
}

/** A round with the tape: every speaker from every seat, the reference seat twice, and every point from its nearest planes. */
export function tapeRound(truth: Truth, random: Random): TapeReading[] {
	const points = truePoints(truth);
	const readings: TapeReading[] = [];
	const between = (from: string, to: string) =>
		readings.push({from, to, metres: taken(distanceMetres(points[from]!, points[to]!), random)});
	const toPlane = (from: string, plane: string) =>
		readings.push({from, to: plane, metres: taken(toPlaneMetres(points[from]!, plane, truth), random)});

	for (let repeat = 0; repeat < 2; repeat++) {
		readings.push({from: 'wall:left', to: 'wall:right', metres: taken(truth.widthMetres, random)});
		readings.push({from: 'wall:front', to: 'wall:back', metres: taken(truth.lengthMetres, random)});
	}

	for (const seat of [...Object.keys(truth.seats), 'screen']) {
		for (const plane of ['wall:left', 'wall:right', 'wall:front', 'floor']) toPlane(seat, plane);
	}

	const sources = [...Object.keys(truth.speakers), ...Object.keys(truth.subs)];
	for (const seat of Object.keys(truth.seats)) {
		for (const source of [...sources, 'screen']) {
			between(seat, source);
			if (seat === 'middle') between(seat, source);
		}
	}

	for (const source of sources) {
		const [x, y] = points[source]!;
		toPlane(source, x < truth.widthMetres / 2 ? 'wall:left' : 'wall:right');
		toPlane(source, y < truth.lengthMetres / 2 ? 'wall:front' : 'wall:back');
		toPlane(source, 'floor');
	}

	between('FL', 'FR');
	if (truth.speakers.LS) between('LS', 'RS');
	else between('SiL', 'SiR');
	return readings;
}
