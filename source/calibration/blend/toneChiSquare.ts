import {type BlendTone, phaseBetween} from './tones.ts';

const iterationsAtMost = 12;
/** Energy that is left of a full cancellation; keeps the logarithm and its slope finite. */
const floorRatio = 1e-7;

export type ToneFit = {
	readonly chiSquare: number;
	/** Levels of each group alone that fit best with everything read at this tone, dB. */
	readonly stillDb: number;
	readonly movedDb: number;
};

/**
Smallest χ² of all readings at one tone for a given arrival and polarity, over the two unknown true levels.

The levels alone carry the meter's noise as well, and near a cancellation that decides; so they are fitted along:
Gauss-Newton in two unknowns, damped where a step does not help.

@param arrivalMs - Arrival of the moved group after the still one, ms.
*/
export function fitTone(tone: BlendTone, arrivalMs: number, inverted: boolean): ToneFit {
	const {both} = tone;
	const cosines = both.map(reading =>
		Math.cos(phaseBetween(tone, arrivalMs, reading.delayMs, inverted !== reading.inverted)),
	);
	const stillWeight = 1 / tone.stillSigmaDb ** 2;
	const movedWeight = 1 / tone.movedSigmaDb ** 2;
	let stillDb = tone.stillDb;
	let movedDb = tone.movedDb;
	let best = {chiSquare: Number.POSITIVE_INFINITY, stillDb, movedDb};
	let damping = 1e-3;
	let [a, b, c, p, q] = [0, 0, 0, 0, 0];
	for (let iteration = 0; iteration < iterationsAtMost; iteration += 1) {
		const stillMiss = tone.stillDb - stillDb;
		const movedMiss = tone.movedDb - movedDb;
		let chiSquare = stillMiss ** 2 * stillWeight + movedMiss ** 2 * movedWeight;
		let [aHere, bHere, cHere] = [stillWeight, 0, movedWeight];
		let [pHere, qHere] = [stillMiss * stillWeight, movedMiss * movedWeight];
		for (let index = 0; index < both.length; index += 1) {
			const reading = both[index]!;
			const still = 10 ** ((stillDb + reading.stillOffsetDb) / 10);
			const moved = 10 ** ((movedDb + reading.movedOffsetDb) / 10);
			const cross = Math.sqrt(still * moved) * cosines[index]!;
			const total = Math.max(still + moved + 2 * cross, floorRatio * (still + moved));
			const miss = reading.decibels - 10 * Math.log10(total);
			const weight = 1 / reading.sigmaDb ** 2;
			const byStill = (still + cross) / total;
			const byMoved = (moved + cross) / total;
			chiSquare += miss * miss * weight;
			aHere += byStill * byStill * weight;
			bHere += byStill * byMoved * weight;
			cHere += byMoved * byMoved * weight;
			pHere += byStill * miss * weight;
			qHere += byMoved * miss * weight;
		}

		const gain = best.chiSquare - chiSquare;
		if (gain > 0) {
			best = {chiSquare, stillDb, movedDb};
			[a, b, c, p, q] = [aHere, bHere, cHere, pHere, qHere];
			if (gain < 1e-5) break;
			damping /= 10;
		} else {
			if (damping > 1e4) break;
			damping *= 20;
		}

		const dampedA = a * (1 + damping);
		const dampedC = c * (1 + damping);
		const determinant = dampedA * dampedC - b * b;
		stillDb = best.stillDb + (dampedC * p - b * q) / determinant;
		movedDb = best.movedDb + (dampedA * q - b * p) / determinant;
	}

	return best;
}
