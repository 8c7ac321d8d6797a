/** Random choices from a seed (mulberry32), so that every case can be made again. */
export function randomFrom(seed) {
	let state = seed >>> 0;
	const next = () => {
		state = (state + 0x6d2b79f5) >>> 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
	const below = count => Math.floor(next() * count);
	return {next, below, chance: share => next() < share, pick: list => list[below(list.length)]};
}
