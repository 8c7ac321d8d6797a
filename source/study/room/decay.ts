/** A surface of the room: its area and the share of sound energy it takes. */
export type Surface = {readonly squareMetres: number; readonly absorption: number};

/** 24·ln 10 / c at 20 °C, seconds per metre: the constant of both formulas, 0.161. */
const decayConstant = (speedOfSound: number) => (24 * Math.LN10) / speedOfSound;

const sumOf = (surfaces: readonly Surface[], of: (surface: Surface) => number) =>
	surfaces.reduce((sum, surface) => sum + of(surface), 0);

/**
Reverberation time by Sabine's formula, T = 24·ln 10/c · V/A, seconds; Infinity where nothing absorbs.

@see Kuttruff, Room Acoustics, 5th ed., eq. 5.9.
*/
export function sabineDecaySeconds(
	volumeCubicMetres: number,
	surfaces: readonly Surface[],
	speedOfSound: number,
): number {
	const area = sumOf(surfaces, ({squareMetres, absorption}) => squareMetres * absorption);
	return (decayConstant(speedOfSound) * volumeCubicMetres) / area;
}

/**
Reverberation time by Eyring's formula, which holds for strongly absorbing rooms too: T = 24·ln 10/c · V/(−S·ln(1 − ᾱ)).

@see Eyring, Journal of the Acoustical Society of America 1 (1930), 217.
*/
export function eyringDecaySeconds(
	volumeCubicMetres: number,
	surfaces: readonly Surface[],
	speedOfSound: number,
): number {
	const whole = sumOf(surfaces, ({squareMetres}) => squareMetres);
	const mean = sumOf(surfaces, ({squareMetres, absorption}) => squareMetres * absorption) / whole;
	return (decayConstant(speedOfSound) * volumeCubicMetres) / (-whole * Math.log(1 - mean));
}

/**
Frequency above which modes overlap so much that single ones no longer matter, hertz.

@see Schroeder, Journal of the Acoustical Society of America 99 (1996), 3240: 2000·√(T/V).
*/
export function schroederHertz(volumeCubicMetres: number, decaySeconds: number): number {
	return 2000 * Math.sqrt(decaySeconds / volumeCubicMetres);
}
