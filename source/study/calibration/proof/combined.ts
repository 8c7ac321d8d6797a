import {bothLevelDb} from '../blend/cosine.ts';

/** One level of two sources together at a tone, with the phase that was added to the unknown one. */
export type PhaseReading = {
	readonly levelDb: number;
	readonly sigmaDb: number;
	/** Each alone under the settings of this reading, dB. */
	readonly firstDb: number;
	readonly secondDb: number;
	/** Phase added by delay and polarity to that of the settings asked about, radians. */
	readonly addedPhase: number;
};

const phaseSteps = 120;
/** Phases of less weight change no level by a hundredth of a decibel. */
const leastWeight = 1e-5;

/** A phase between two sources, radians, and how probable it is. */
export type WeighedPhase = {readonly phase: number; readonly weight: number};

/**
Probability of each phase between two sources under the settings asked about, from levels taken under others.

@returns The phases that count, radians, with weights whose sum is 1. Without readings all are alike.
*/
export function phaseWeights(readings: readonly PhaseReading[]): readonly WeighedPhase[] {
	const chiSquares = Float64Array.from({length: phaseSteps}, (_, step) => {
		const phase = (2 * Math.PI * step) / phaseSteps;
		return readings.reduce((sum, {levelDb, sigmaDb, firstDb, secondDb, addedPhase}) => {
			const expected = bothLevelDb(firstDb, secondDb, Math.cos(phase + addedPhase));
			return sum + ((levelDb - expected) / sigmaDb) ** 2;
		}, 0);
	});
	const smallest = chiSquares.reduce((low, value) => Math.min(low, value));
	const weights = chiSquares.map(value => Math.exp((smallest - value) / 2));
	const total = weights.reduce((sum, value) => sum + value, 0);
	return [...weights].flatMap((value, step) =>
		value / total < leastWeight ? [] : [{phase: (2 * Math.PI * step) / phaseSteps, weight: value / total}],
	);
}

/**
Level of two sources together, averaged over what is known of their phase.

@param phases - From `phaseWeights`.
@param addedPhase - Radians, on top.
@returns Mean and standard deviation, dB.
*/
export function levelOverPhases(
	phases: readonly WeighedPhase[],
	firstDb: number,
	secondDb: number,
	addedPhase: number,
): {readonly value: number; readonly sigma: number} {
	let mean = 0;
	let square = 0;
	for (const {phase, weight} of phases) {
		const level = bothLevelDb(firstDb, secondDb, Math.cos(phase + addedPhase));
		mean += weight * level;
		square += weight * level * level;
	}

	return {value: mean, sigma: Math.sqrt(Math.max(0, square - mean * mean))};
}
