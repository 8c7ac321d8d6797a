/** Random numbers that are the same in every run: mulberry32 for the uniform ones, Box and Muller for the normal ones. */
export type Random = {readonly uniform: () => number; readonly normal: () => number};

export function seededRandom(seed: number): Random {
	let state = seed >>> 0;
	const uniform = () => {
		state = (state + 0x6d2b79f5) >>> 0;
		let mixed = Math.imul(state ^ (state >>> 15), state | 1);
		mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
		return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
	};

	return {uniform, normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())};
}
