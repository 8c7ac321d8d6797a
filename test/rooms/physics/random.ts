/** Seeded draws: the same numbers for the same seed on every machine. */
export type Draws = {
	/** Evenly spread from `low` to `high`. */
	uniform(low: number, high: number): number;
	/** Normally distributed around 0. */
	gauss(sigma: number): number;
	chance(probability: number): boolean;
	pick<T>(from: readonly T[]): T;
	/** Draws of their own, which nothing drawn from these changes. */
	branch(name: string): Draws;
};

const hashOf = (text: string): number => {
	let hash = 2166136261;
	for (const character of text) hash = Math.imul(hash ^ character.charCodeAt(0), 16777619);
	return hash >>> 0;
};

/**
@param seed - A number or a text.
@see Mulberry32, a 32-bit generator in the public domain; FNV-1a for texts; Box and Muller's normal deviates.
*/
export function drawsOf(seed: number | string): Draws {
	const start = hashOf(String(seed));
	let state = start;
	const next = () => {
		state = (state + 0x6d2b79f5) | 0;
		let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
		mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
		return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
	};
	return {
		uniform: (low, high) => low + (high - low) * next(),
		gauss: sigma => sigma * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
		chance: probability => next() < probability,
		pick: from => from[Math.floor(next() * from.length)]!,
		branch: name => drawsOf(`${start}/${name}`),
	};
}
