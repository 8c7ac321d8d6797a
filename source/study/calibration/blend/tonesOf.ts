/** A tone this near counts as the one asked for, octaves: less than half the way to its neighbour. */
const nearOctaves = 1 / 8;

/**
Tones about a crossover: a third of an octave below, at it, and a third above, in whole hertz.
*/
export function blendTones(crossoverHertz: number): readonly number[] {
	return [0.8, 1, 1.25].map(factor => Math.round(crossoverHertz * factor));
}

/**
Tones to read: those wanted, or where readings were begun with a tone close to one, that tone, so that a generator with
steps of its own serves as well.

@param readHertz - Tones of the readings so far, hertz.
*/
export function tonesNear(wanted: readonly number[], readHertz: readonly number[]): number[] {
	const counts = new Map<number, number>();
	for (const hertz of readHertz) counts.set(hertz, (counts.get(hertz) ?? 0) + 1);
	return wanted.map(hertz => {
		if (counts.has(hertz)) return hertz;
		let best: {readonly hertz: number; readonly count: number} | undefined;
		for (const [read, count] of counts) {
			const isNear = Math.abs(Math.log2(read / hertz)) < nearOctaves;
			if (isNear && count > (best?.count ?? 0)) best = {hertz: read, count};
		}

		return best?.hertz ?? hertz;
	});
}

/** Tones to read about a crossover, as `tonesNear` has them. */
export function tonesToRead(crossoverHertz: number, readHertz: readonly number[]): number[] {
	return tonesNear(blendTones(crossoverHertz), readHertz);
}
