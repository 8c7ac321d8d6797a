import {type BlendTone, phaseBetween} from './tones.ts';

const iterationsAtMost = 12;
/** Energy that is left of a full cancellation; keeps the logarithm and its slope finite. */
const floorRatio = 1e-7;

/** Room for the cosines of one tone, kept between calls: this runs some ten thousand times a fit. */
let cosines = new Float64Array(16);

const energyPerDb = Math.LN10 / 10;

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
@param closeEnough - Gain of χ² in a step below which the fit ends.
*/
export function fitTone(tone: BlendTone, arrivalMs: number, inverted: boolean, closeEnough = 1e-5): ToneFit {
	const {both} = tone;
	if (cosines.length < both.length) cosines = new Float64Array(2 * both.length);
	for (let index = 0; index < both.length; index += 1) {
		const reading = both[index]!;
		const phase = phaseBetween(tone, arrivalMs, reading.delayMs, inverted !== reading.inverted);
		cosines[index] = Math.cos(phase);
	}

	const stillWeight = 1 / tone.stillSigmaDb ** 2;
	const movedWeight = 1 / tone.movedSigmaDb ** 2;
	let stillDb = tone.stillDb;
	let movedDb = tone.movedDb;
	let best = {chiSquare: Number.POSITIVE_INFINITY, stillDb, movedDb};
	let damping = 1e-3;
	let a = 0;
	let b = 0;
	let c = 0;
	let p = 0;
	let q = 0;
	for (let iteration = 0; iteration < iterationsAtMost; iteration += 1) {
		const stillMiss = tone.stillDb - stillDb;
		const movedMiss = tone.movedDb - movedDb;
		let chiSquare = stillMiss ** 2 * stillWeight + movedMiss ** 2 * movedWeight;
		let aHere = stillWeight;
		let bHere = 0;
		let cHere = movedWeight;
		let pHere = stillMiss * stillWeight;
		let qHere = movedMiss * movedWeight;
		for (let index = 0; index < both.length; index += 1) {
			const reading = both[index]!;
			const still = Math.exp(energyPerDb * (stillDb + reading.stillOffsetDb));
			const moved = Math.exp(energyPerDb * (movedDb + reading.movedOffsetDb));
			const cross = Math.sqrt(still * moved) * cosines[index]!;
			const total = Math.max(still + moved + 2 * cross, floorRatio * (still + moved));
			const miss = reading.decibels - Math.log(total) / energyPerDb;
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
			a = aHere;
			b = bHere;
			c = cHere;
			p = pHere;
			q = qHere;
			if (gain < closeEnough) break;
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
