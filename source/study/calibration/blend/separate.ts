import {bothLevelDb} from './cosine.ts';
import type {BlendMinimum} from './fit.ts';
import {type BlendTone, phaseBetween} from './tones.ts';

/** A reading of both that tells the listed answers apart, and what each answer predicts for it. */
export type SeparatingReading = {
	readonly hertz: number;
	readonly addedDelayMs: number;
	/** Level of both that each answer predicts, in the order of the answers, dB unweighted. */
	readonly predictedDb: readonly number[];
	/** Difference between the answers nearest to each other there, in standard deviations of a reading. */
	readonly separation: number;
};

/** In a cancellation a meter at a seat reads no deeper than this below the louder of the two, dB. */
const deepestDb = 15;

function predict(tone: BlendTone, minimum: BlendMinimum, index: number, addedMs: number): number {
	const {stillDb, movedDb} = minimum.tones[index]!;
	const cosine = Math.cos(phaseBetween(tone, minimum.arrivalMs, addedMs, minimum.inverted));
	return Math.max(bothLevelDb(stillDb, movedDb, cosine), Math.max(stillDb, movedDb) - deepestDb);
}

/**
The next reading that would separate the answers best: the tone and added delay at which the two nearest predictions
are furthest apart.

@param tones - Shape (n), those that the answers were fitted to.
@param delaysMs - Delays that the boxes can add, ms.
@param sigmaDb - Standard deviation of a reading.
@returns `undefined` for fewer than two answers.
*/
export function separatingReading(
	tones: readonly BlendTone[],
	minima: readonly BlendMinimum[],
	delaysMs: readonly number[],
	sigmaDb: number,
): SeparatingReading | undefined {
	if (minima.length < 2) return undefined;
	let best: (SeparatingReading & {readonly sum: number}) | undefined;
	for (const [index, tone] of tones.entries()) {
		for (const addedDelayMs of delaysMs) {
			const predictedDb = minima.map(minimum => predict(tone, minimum, index, addedDelayMs));
			const rising = [...predictedDb].sort((a, b) => a - b);
			const gaps = rising.slice(1).map((level, gap) => (level - rising[gap]!) / sigmaDb);
			const separation = Math.min(...gaps);
			// Where some pair stays alike at every reading, the one that parts most of the others is next.
			const sum = gaps.reduce((total, gap) => total + Math.min(gap, 3), 0);
			const gain = best
				? Math.min(separation, 3) - Math.min(best.separation, 3) || sum - best.sum
				: Number.POSITIVE_INFINITY;
			if (gain > 1e-9) best = {hertz: tone.hertz, addedDelayMs, predictedDb, separation, sum};
		}
	}

	if (!best) return undefined;
	const {sum: _, ...reading} = best;
	return reading;
}
