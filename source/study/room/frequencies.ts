/** Frequencies from one to another in equal fractions of an octave, both ends within, hertz. */
export function octaveFractionGrid(fromHertz: number, toHertz: number, perOctave: number): number[] {
	const count = Math.floor(perOctave * Math.log2(toHertz / fromHertz) + 1e-9);
	return Array.from({length: count + 1}, (_, i) => fromHertz * 2 ** (i / perOctave));
}
