/**
A room of the test's own, by image sources, to play a round through: it shares no code with the program. A path is a
list of delays and gains; bass management and boxes are filters by frequency.

@see Allen & Berkley, J. Acoust. Soc. Am. 65 (1979) 943.
*/
export type Place = readonly [number, number, number];

export type Room = {
	readonly size: Place;
	/** Pressure reflection of all walls, by frequency. */
	readonly reflection: (hertz: number) => number;
	readonly speed: number;
};

export type Complex = readonly [number, number];
export const multiply = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];

/** Random numbers, mulberry32. */
export function randomFrom(seed: number): () => number {
	let state = seed >>> 0;
	return () => {
		state = (state + 0x6d2b79f5) >>> 0;
		let t = Math.imul(state ^ (state >>> 15), state | 1);
		t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}

/** Reflection of walls that gives a decay time by Eyring, in a box. */
export function reflectionFor(size: Place, seconds: number): number {
	const [a, b, c] = size;
	const volume = a * b * c;
	const surface = 2 * (a * b + a * c + b * c);
	return Math.sqrt(Math.exp((-0.161 * volume) / (surface * seconds)));
}

export type Path = {readonly seconds: number; readonly gain: number; readonly bounces: number};

/** All paths that arrive within a time; the gain is 1/r, walls not yet counted. */
export function pathsOf({size, speed}: Room, from: Place, to: Place, withinSeconds: number): Path[] {
	const reach = withinSeconds * speed;
	const axes = size.map((length, axis) => {
		const found: Array<readonly [number, number]> = [];
		const most = Math.ceil(reach / (2 * length)) + 1;
		for (let n = -most; n <= most; n += 1) {
			found.push([2 * n * length + from[axis]! - to[axis]!, Math.abs(2 * n)]);
			found.push([2 * n * length - from[axis]! - to[axis]!, Math.abs(2 * n - 1)]);
		}

		return found.filter(([distance]) => Math.abs(distance) < reach);
	});
	const paths: Path[] = [];
	for (const [x, bx] of axes[0]!)
		for (const [y, by] of axes[1]!)
			for (const [z, bz] of axes[2]!) {
				const distance = Math.sqrt(x * x + y * y + z * z);
				if (distance < reach)
					paths.push({seconds: distance / speed, gain: 1 / distance, bounces: bx + by + bz});
			}

	return paths;
}
