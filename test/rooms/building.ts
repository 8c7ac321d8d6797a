import {type Box, octaves, type Point} from './physics/box.ts';
import {wallsFor} from './physics/decay.ts';
import type {Draws} from './physics/random.ts';

/** Rooms looked at while building, and rooms kept apart for reporting. */
export type RoomRange = 'building' | 'fresh';

/** A room of 3.4–5.4 × 4.2–7.0 × 2.3–2.9 m whose six walls absorb unequally, with 0.2, 0.3 … 0.6 s in turn. */
export function drawBuild(
	draws: Draws,
	index: number,
): {readonly box: Box; readonly sizeMetres: Point; readonly reverberationSeconds: number} {
	const sizeMetres: Point = [draws.uniform(3.4, 5.4), draws.uniform(4.2, 7), draws.uniform(2.3, 2.9)];
	const reverberationSeconds = [0.2, 0.3, 0.4, 0.5, 0.6][index % 5]!;
	const walls = Array.from({length: 6}, () => draws.gauss(0.5));
	const shares = octaves.map(() => walls.map(wall => Math.exp(wall + draws.gauss(0.25))));
	return {
		box: wallsFor({sizeMetres, speedOfSound: 343.9, shares, seconds: reverberationSeconds}),
		sizeMetres,
		reverberationSeconds,
	};
}
