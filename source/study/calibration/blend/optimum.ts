import {gridPoints, relativeGrid} from '../crossover/pairing.ts';
import type {BlendPaths} from './paths.ts';

/** An alignment, as a change of the moved group on top of the standing settings. */
export type Alignment = {
	readonly addedMs: number;
	readonly flip: boolean;
	/** Mean over the crossover octaves of what is lost against perfect addition, dB, ≥ 0. */
	readonly lossDb: number;
};

/** Mean loss at which turning the polarity is worth a second control, dB. */
const flipGainDb = 0.2;
/** Full cancellations count no deeper than this, dB. */
const deepestDb = 40;

/**
Loss, dB, of an arrival, ms, and a polarity. Every frequency only adds to it, so that the sum may end where it is above
`enoughDb`; infinite then.
*/
export type Loss = (arrivalMs: number, inverted: boolean, enoughDb?: number) => number;

/** Magnitudes and phases of both paths from half to twice the crossover. */
export function alignmentLoss(paths: BlendPaths): Loss {
	const frequenciesHz = relativeGrid.map(x => x * paths.crossoverHertz);
	const still = paths.still(frequenciesHz);
	const moved = paths.moved(frequenciesHz);
	const energies = new Float64Array(gridPoints);
	const crosses = new Float64Array(gridPoints);
	const phases = new Float64Array(gridPoints);
	for (let point = 0; point < gridPoints; point += 1) {
		const one = Math.hypot(still.real[point]!, still.imaginary[point]!);
		const other = Math.hypot(moved.real[point]!, moved.imaginary[point]!);
		energies[point] = one * one + other * other;
		crosses[point] = 2 * one * other;
		phases[point] =
			Math.atan2(moved.imaginary[point]!, moved.real[point]!) -
			Math.atan2(still.imaginary[point]!, still.real[point]!);
	}

	const deepest = 10 ** (-deepestDb / 10);
	return (arrivalMs, inverted, enoughDb = Number.POSITIVE_INFINITY) => {
		const lowest = -enoughDb * gridPoints * (1 + 1e-9);
		let sum = 0;
		for (let point = 0; point < gridPoints; point += 1) {
			const angle = phases[point]! - 2 * Math.PI * frequenciesHz[point]! * (arrivalMs / 1000);
			const cross = (inverted ? -1 : 1) * crosses[point]! * Math.cos(angle);
			const whole = energies[point]! + crosses[point]!;
			sum += 10 * Math.log10(Math.max(energies[point]! + cross, whole * deepest) / whole);
			if (sum < lowest) return Number.POSITIVE_INFINITY;
		}

		return -sum / gridPoints;
	};
}

/**
The change of delay and polarity with which the two groups add up most through the crossover.

@param loss - Loss for a delay added, ms, and for polarity turned, dB: `alignmentLoss` of one pair or a mean of several.
@param middleMs - Added delay about which to search, ms: minus the arrival found.
@returns Polarity is turned only where that gains 0.2 dB in the mean.
*/
export function bestAlignment(loss: Loss, crossoverHertz: number, middleMs: number): Alignment {
	const reachMs = 750 / crossoverHertz;
	const steps = 240;
	const best = (flip: boolean): Alignment => {
		let found = {addedMs: middleMs, lossDb: Number.POSITIVE_INFINITY};
		for (let step = 0; step <= 2 * steps; step += 1) {
			// From the middle outwards, so that of equals the nearer one stays.
			const away = (step % 2 === 0 ? 1 : -1) * Math.ceil(step / 2);
			const addedMs = middleMs + (reachMs * away) / steps;
			const lossDb = loss(addedMs, flip, found.lossDb);
			if (lossDb < found.lossDb - 1e-9) found = {addedMs, lossDb};
		}

		for (let width = reachMs / steps / 2; width > 1e-3; width /= 2) {
			for (const addedMs of [found.addedMs - width, found.addedMs + width]) {
				const lossDb = loss(addedMs, flip, found.lossDb);
				if (lossDb < found.lossDb) found = {addedMs, lossDb};
			}
		}

		return {...found, flip};
	};

	const kept = best(false);
	const flipped = best(true);
	return flipped.lossDb < kept.lossDb - flipGainDb ? flipped : kept;
}
