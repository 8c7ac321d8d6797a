import type {Point} from './physics/box.ts';
import type {Draws} from './physics/random.ts';

export const mainIds = ['FL', 'FR', 'FC', 'LS', 'RS', 'TpSiL', 'TpSiR'] as const;
export type MainId = (typeof mainIds)[number];
export const subIds = ['sub1', 'sub2'] as const;
export type SubId = (typeof subIds)[number];
export type SourceId = MainId | SubId;

/** Where everything truly is. `points` are the ear and places around it where a meter may stand. */
export type Places = {
	readonly at: Readonly<Record<SourceId, Point>>;
	readonly seat: Point;
	readonly screen: Point;
};

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));

/** A room as people have it: fronts a little unlike, surrounds beside or behind the seat, two subs along the walls. */
export function layOut([width, length, height]: Point, draws: Draws): Places {
	const seat: Point = [
		width / 2 + draws.uniform(-0.25, 0.25),
		length * draws.uniform(0.55, 0.72),
		draws.uniform(0.95, 1.15),
	];
	const screen: Point = [width / 2, 0.06, draws.uniform(1, 1.3)];
	const front = (side: number): Point => {
		const y = draws.uniform(0.3, 0.6);
		const angle = (draws.uniform(22, 30) * Math.PI) / 180;
		const x = seat[0] + side * (seat[1] - y) * Math.tan(angle);
		return [clamp(x, 0.3, width - 0.3), y, draws.uniform(0.85, 1.15)];
	};
	const surround = (side: number): Point => {
		const x = side < 0 ? draws.uniform(0.15, 0.35) : width - draws.uniform(0.15, 0.35);
		const turn = draws.uniform(0.1, 0.5) * Math.abs(x - seat[0]);
		return [x, clamp(seat[1] + turn, 0, length - 0.3), draws.uniform(1.1, 1.5)];
	};
	const top = (side: number): Point => [
		seat[0] + side * draws.uniform(0.7, 1),
		seat[1] + draws.uniform(-0.3, 0.2),
		height - draws.uniform(0.08, 0.2),
	];
	const [sub1, sub2] = subPlaces([width, length, height], seat, draws);
	return {
		seat,
		screen,
		at: {
			FL: front(-1),
			FR: front(1),
			FC: [width / 2 + draws.uniform(-0.1, 0.1), draws.uniform(0.2, 0.4), draws.uniform(0.5, 0.8)],
			LS: surround(-1),
			RS: surround(1),
			TpSiL: top(-1),
			TpSiR: top(1),
			sub1,
			sub2,
		},
	};
}

/** Two places along the walls, at least a metre from the seat and from each other. */
function subPlaces([width, length]: Point, seat: Point, draws: Draws): readonly [Point, Point] {
	const one = (): Point => {
		const from = draws.uniform(0.25, 0.5);
		const along = draws.uniform(0.3, 0.95);
		const z = draws.uniform(0.22, 0.35);
		const side = draws.pick(['front', 'front', 'back', 'left', 'right'] as const);
		if (side === 'front') return [clamp(along * width, 0.3, width - 0.3), from, z];
		if (side === 'back') return [clamp(along * width, 0.3, width - 0.3), length - from, z];
		const y = clamp(along * length, 0.3, length - 0.3);
		return side === 'left' ? [from, y, z] : [width - from, y, z];
	};
	const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]);
	for (;;) {
		const [first, second] = [one(), one()];
		if (apart(first, seat) > 1 && apart(second, seat) > 1 && apart(first, second) > 1) return [first, second];
	}
}
