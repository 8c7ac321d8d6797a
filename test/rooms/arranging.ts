import {judgeVariants} from '../../source/study/arrangement/variants.ts';
import {bassFigures, bassFrequenciesHertz} from '../../source/study/room/bass.ts';
import type {RoomInputs} from '../../source/study/room/roomStudy.ts';
import {drawsOf, type RoomRange} from './index.ts';
import {distanceBetween, type Point} from './physics/box.ts';
import {pathsOf, responseAt} from './physics/transfer.ts';
import {bareRoom} from './world.ts';

/** How the model's order of sub places compares with the room's own. */
export type Ranked = {
	/** Spearman's rank correlation of spread by the model and in the room, over all pairs of places. */
	readonly correlation: number;
	/** How much worse the model's pick is than the room's best pair, dB. */
	readonly regretDb: number;
	/** How much worse a pair picked blindly is, on average, dB. */
	readonly blindDb: number;
};

/** Eight places along the walls, none on a forbidden stretch of one wall, none within 0.7 m of a seat. */
function drawPlaces(size: Point, seats: readonly Point[], draws: ReturnType<typeof drawsOf>): Point[] {
	const [width, length] = size;
	const forbiddenFrom = draws.uniform(0, 0.6);
	const isForbidden = (x: number, y: number) =>
		x < 0.3 && y / length > forbiddenFrom && y / length < forbiddenFrom + 0.4;
	const found: Point[] = [];
	while (found.length < 8) {
		const side = Math.floor(draws.uniform(0, 4));
		const share = draws.uniform(0.05, 0.95);
		const [x, y] = [
			[0.25, share * length],
			[width - 0.25, share * length],
			[share * width, 0.25],
			[share * width, length - 0.25],
		][side] as [number, number];
		const point: Point = [
			Math.min(width - 0.25, Math.max(0.25, x)),
			Math.min(length - 0.25, Math.max(0.25, y)),
			0.22,
		];
		if (isForbidden(x, y) || seats.some(seat => distanceBetween(seat, point) < 0.7)) continue;
		if (found.some(other => distanceBetween(other, point) < 0.4)) continue;
		found.push(point);
	}

	return found;
}

function ranksOf(values: readonly number[]): number[] {
	const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!);
	const ranks = new Array<number>(values.length);
	for (const [rank, index] of order.entries()) ranks[index] = rank;
	return ranks;
}

function correlationOf(a: readonly number[], b: readonly number[]): number {
	const [one, other] = [ranksOf(a), ranksOf(b)];
	const n = a.length;
	const squares = one.reduce((sum, rank, i) => sum + (rank - other[i]!) ** 2, 0);
	return 1 - (6 * squares) / (n * (n * n - 1));
}

/** A room with eight places for two subs, what each pair does there, and what the product is told of it. */
export type PlacesInRoom = {
	/** Spread between the seats with each pair, by sums of images, dB. */
	readonly trueSpreadDb: readonly number[];
	/** The room as it is told: sizes 1.5 % wrong, the decay guessed. */
	readonly room: Pick<RoomInputs, 'shape' | 'decay' | 'speedOfSound'>;
	readonly variants: ReadonlyArray<{
		readonly subs: readonly Point[];
		readonly seats: readonly Point[];
		readonly lifted: number;
	}>;
};

/** A room, eight places for two subs, and three seats up to half a metre off the middle. */
export function placesInRoom(range: RoomRange, index: number): PlacesInRoom {
	const {box, sizeMetres: size} = bareRoom(range, index).build;
	const draws = drawsOf(`arranging ${range} ${index}`);
	const [width, length, height] = size;
	const middle = width / 2 + draws.uniform(-0.5, 0.5);
	const y = draws.uniform(0.5, 0.75) * length;
	const seats: Point[] = [0, -0.7, 0.7].map(off => [
		Math.min(width - 0.5, Math.max(0.5, middle + off)),
		y,
		1.1,
	]);
	const places = drawPlaces(size, seats, draws);
	const pairs = places.flatMap((_, a) => places.slice(a + 1).map((__, b) => [a, a + 1 + b] as const));

	const paths = places.map(at =>
		seats.map(seat => {
			const sampled = pathsOf(box, {at}, seat, {rate: 4000, lowestHertz: 15, highestHertz: 150});
			return responseAt(sampled, bassFrequenciesHertz);
		}),
	);
	const trueSpreadDb = pairs.map(([a, b]) => {
		const levels = seats.map((_, s) =>
			bassFrequenciesHertz.map((hertz, f) => {
				let real = 0;
				let imaginary = 0;
				for (const place of [a, b]) {
					const response = paths[place]![s]!;
					const phase = (2 * Math.PI * hertz * distanceBetween(places[place]!, seats[0]!)) / box.speedOfSound;
					real += Math.cos(phase) * response.re[f]! - Math.sin(phase) * response.im[f]!;
					imaginary += Math.cos(phase) * response.im[f]! + Math.sin(phase) * response.re[f]!;
				}

				return 20 * Math.log10(Math.hypot(real, imaginary));
			}),
		);
		return bassFigures(bassFrequenciesHertz, levels).spreadDb;
	});

	const wrong = () => 1 + draws.gauss(0.015);
	const scale = [wrong(), wrong(), wrong()] as const;
	const seen = (point: Point): Point => [point[0] * scale[0], point[1] * scale[1], point[2] * scale[2]];
	const room: Pick<RoomInputs, 'shape' | 'decay' | 'speedOfSound'> = {
		shape: {
			kind: 'box',
			widthMetres: width * scale[0],
			lengthMetres: length * scale[1],
			heightMetres: height * scale[2],
		},
		decay: {seconds: 0.4, from: 'estimated'},
		speedOfSound: 343,
	};
	return {
		trueSpreadDb,
		room,
		variants: pairs.map(([a, b]) => ({
			subs: [seen(places[a]!), seen(places[b]!)],
			seats: seats.map(seen),
			lifted: 2,
		})),
	};
}

/**
Ranks all pairs of eight sub places for three seats by the product's model, with sizes 1.5 % wrong and the decay guessed,
and by sums of images in the room itself.
*/
export function rankPlaces(range: RoomRange, index: number): Ranked {
	const {trueSpreadDb, room, variants} = placesInRoom(range, index);
	const judged = judgeVariants({room, steps: undefined}, variants).map(({judged: {meanDb}}) => meanDb);
	const pick = judged.indexOf(Math.min(...judged));
	const best = Math.min(...trueSpreadDb);
	return {
		correlation: correlationOf(judged, trueSpreadDb),
		regretDb: trueSpreadDb[pick]! - best,
		blindDb: trueSpreadDb.reduce((sum, value) => sum + value, 0) / trueSpreadDb.length - best,
	};
}
