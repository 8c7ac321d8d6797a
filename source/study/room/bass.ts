import {octaveFractionGrid} from './frequencies.ts';
import type {Response} from './modalResponse.ts';

/** Levels of a response, dB. */
export function levelsDb({real, imaginary}: Response): number[] {
	return Array.from(real, (value, f) => 20 * Math.log10(Math.max(1e-9, Math.hypot(value, imaginary[f]!))));
}

/** The sum of responses at one receiver, each with a factor and a delay. */
export function summed(
	frequenciesHertz: readonly number[],
	parts: ReadonlyArray<{
		readonly response: Response;
		readonly gainDb?: number;
		readonly delayMs?: number;
		readonly isInverted?: boolean;
	}>,
): Response {
	const real = new Float64Array(frequenciesHertz.length);
	const imaginary = new Float64Array(frequenciesHertz.length);
	for (const {response, gainDb = 0, delayMs = 0, isInverted = false} of parts) {
		const factor = (isInverted ? -1 : 1) * 10 ** (gainDb / 20);
		for (const [f, hertz] of frequenciesHertz.entries()) {
			const phase = (-2 * Math.PI * hertz * delayMs) / 1000;
			const [cosine, sine] = [factor * Math.cos(phase), factor * Math.sin(phase)];
			real[f]! += cosine * response.real[f]! - sine * response.imaginary[f]!;
			imaginary[f]! += cosine * response.imaginary[f]! + sine * response.real[f]!;
		}
	}

	return {real, imaginary};
}

/** What the bass of an arrangement is judged by. */
export type BassFigures = {
	/** Mean over 20 to 120 Hz (1/12 octave) of the standard deviation of level over seats, dB; 0 for one seat. */
	readonly spreadDb: number;
	/** Standard deviation of the level over frequency at the reference seat, dB. */
	readonly flatnessDb: number;
	/** The deepest hole at the reference seat below its mean level, and where. */
	readonly hole: {readonly frequencyHertz: number; readonly depthDb: number};
	/** Mean level over seats and frequencies, dB against the free field of one sub at 1 m. */
	readonly outputDb: number;
};

/** The frequencies over which bass is judged: 20 to 120 Hz in twelfths of an octave. */
export const bassFrequenciesHertz: readonly number[] = octaveFractionGrid(20, 120, 12);

/** Mean and population standard deviation: the seats are all there are, not a sample. */
function meanAndDeviation(values: readonly number[]): {readonly mean: number; readonly deviation: number} {
	let mean = 0;
	for (const value of values) mean += value / values.length;
	let square = 0;
	for (const value of values) square += (value - mean) ** 2 / values.length;
	return {mean, deviation: Math.sqrt(square)};
}

/**
Figures of the bass from its levels at the seats, the reference seat first.

@param seatLevelsDb - One list a seat, over the same frequencies.
@see Welti and Devantier, Journal of the Audio Engineering Society 54 (2006), 347: mean spatial variance over seats.
*/
export function bassFigures(
	frequenciesHertz: readonly number[],
	seatLevelsDb: ReadonlyArray<readonly number[]>,
): BassFigures {
	const reference = seatLevelsDb[0]!;
	const {mean, deviation} = meanAndDeviation(reference);
	const count = frequenciesHertz.length;
	const here = new Array<number>(seatLevelsDb.length);
	let lowest = 0;
	let spreadDb = 0;
	let outputDb = 0;
	for (let f = 0; f < count; f++) {
		if (reference[f]! < reference[lowest]!) lowest = f;
		for (let s = 0; s < here.length; s++) here[s] = seatLevelsDb[s]![f]!;
		const over = meanAndDeviation(here);
		spreadDb += over.deviation / count;
		outputDb += over.mean / count;
	}

	return {
		spreadDb,
		flatnessDb: deviation,
		hole: {frequencyHertz: frequenciesHertz[lowest]!, depthDb: mean - reference[lowest]!},
		outputDb,
	};
}
