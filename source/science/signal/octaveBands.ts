/** Octave ratio of the standard, 10^(3/10). @see IEC 61260-1:2014, 5.2. */
export const octaveRatio = 10 ** 0.3;

/** A band by its middle and edges, hertz. */
export type FrequencyBand = {
	readonly middleHertz: number;
	readonly fromHertz: number;
	readonly toHertz: number;
};

/**
Fractional-octave band: fm = 1000·G^(x/b) for odd b, 1000·G^((2x+1)/(2b)) for even b; edges fm·G^(±1/(2b)).

@param index - x; 0 is the band at 1 kHz where b is odd.
@param perOctave - b, such as 1 or 3.
@see IEC 61260-1:2014, 5.4 to 5.6.
*/
export function fractionalOctaveBand(index: number, perOctave: number): FrequencyBand {
	const place = perOctave % 2 === 1 ? index / perOctave : (2 * index + 1) / (2 * perOctave);
	const middleHertz = 1000 * octaveRatio ** place;
	const half = octaveRatio ** (1 / (2 * perOctave));
	return {middleHertz, fromHertz: middleHertz / half, toHertz: middleHertz * half};
}

/** Octaves whose nominal middles are 63 Hz to 8 kHz. */
export const roomOctaves: readonly FrequencyBand[] = [-4, -3, -2, -1, 0, 1, 2, 3].map(index =>
	fractionalOctaveBand(index, 1),
);

/**
Gain of an octave filter without delay: 1 in the middle, from there falling over a whole octave on either side, so that the
powers of neighbours add up to 1 everywhere. As wide flanks as the standard's limits allow ring the shortest.

@returns Amplitude, 0 to 1; −3.01 dB at the edges, nothing beyond the neighbours' middles.
@see IEC 61260-1:2014, 5.10, for the limits; Xiph.Org, Vorbis I specification (2020), 4.3.1, for the curve, there over time.
*/
export function octaveGain({middleHertz, fromHertz, toHertz}: FrequencyBand, hertz: number): number {
	const octave = Math.log(toHertz / fromHertz);
	const away = Math.abs(Math.log(hertz / middleHertz)) / octave;
	if (!(away < 1)) return 0;
	return Math.cos((Math.PI / 2) * Math.sin((Math.PI / 2) * away) ** 2);
}

/** The name that ISO 266 gives to an octave's middle, hertz. */
export function nominalOctave(middleHertz: number): number {
	const names = [16, 31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16_000];
	return names.reduce((best, name) =>
		Math.abs(Math.log(name / middleHertz)) < Math.abs(Math.log(best / middleHertz)) ? name : best,
	);
}
