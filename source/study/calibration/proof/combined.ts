import {bothLevelDb} from '../blend/cosine.ts';

const bandPoints = 48;

/**
Mean of cos(2πfΔt) over a band of pink noise, which has equal power per logarithmic step: how far two arrivals of one
signal add up.

@param lagMs - Difference of the two arrivals, ms.
@returns 1 for none, towards 0 for a long one.
*/
export function meanCosine(fromHertz: number, toHertz: number, lagMs: number): number {
	if (lagMs === 0) return 1;
	const ratio = Math.log(toHertz / fromHertz);
	let sum = 0;
	for (let index = 0; index < bandPoints; index++) {
		const frequencyHz = fromHertz * Math.exp((ratio * (index + 0.5)) / bandPoints);
		sum += Math.cos((2 * Math.PI * frequencyHz * lagMs) / 1000);
	}

	return sum / bandPoints;
}

/**
Level of several sources of one signal together.

@param levelsDb - Shape (n ≥ 1), each alone, dB.
@param likeness - Of sources i and j, −1…1: 1 in phase, 0 without relation, −1 in opposition.
@returns dB; a full cancellation is held at 40 dB below the energy sum, for no room cancels better.
*/
export function combinedLevelDb(
	levelsDb: readonly number[],
	likeness: (i: number, j: number) => number,
): number {
	let energy = 0;
	let cross = 0;
	for (const [i, first] of levelsDb.entries()) {
		energy += 10 ** (first / 10);
		for (let j = 0; j < i; j++) cross += 2 * 10 ** ((first + levelsDb[j]!) / 20) * likeness(i, j);
	}

	return 10 * Math.log10(Math.max(energy + cross, energy * 1e-4));
}

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
