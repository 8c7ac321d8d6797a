import type {AnalogFilter} from '../../../science/acoustics/filters/analogFilter.ts';
import {type ComplexCurve, filterResponse} from '../../../science/acoustics/filters/response.ts';

/** Points from half to twice the crossover, 1/24 octave apart. */
export const gridPoints = 49;

/** Frequencies relative to the crossover, shape (49). */
export const relativeGrid = Float64Array.from({length: gridPoints}, (_, index) => 2 ** (index / 24 - 1));

/** Steps of the delay search in one period: in strides through all of it, then closer about the best. */
const fineSteps = 480;
const strides = [20, 4, 1] as const;

export type Pairing = {
	/** Largest minus smallest level of the sum over the grid at the best alignment, dB. */
	readonly rippleDb: number;
	/** Arrival of the sub after the mains that gives it, ms; within half a period either way. */
	readonly subDelayMs: number;
	readonly inverted: boolean;
	/** How much the ripple grows when the alignment is off, the worse of the two sides, dB. */
	readonly toleranceDb: number;
};

/** Largest over smallest value, as dB of power. */
const rangeDb = (low: number, high: number) =>
	low > 0 ? 10 * Math.log10(high / low) : Number.POSITIVE_INFINITY;

/** Grid of one crossover, hertz, shape (49). */
export function gridAbout(crossoverHertz: number): Float64Array {
	return relativeGrid.map(x => x * crossoverHertz);
}

/**
Response of the sub's side on the grid.

@param sub - Receiver's low-pass and the sub's upper limit.
@param subLow - The sub's low end, of which only the phase counts: no crossover changes its level.
*/
export function subSide(sub: AnalogFilter, subLow: AnalogFilter, grid: Float64Array): ComplexCurve {
	const curve = filterResponse(sub, grid);
	const low = filterResponse(subLow, grid);
	for (let point = 0; point < gridPoints; point += 1) {
		const size = Math.hypot(low.real[point]!, low.imaginary[point]!) || 1;
		const [c, d] = [low.real[point]! / size, low.imaginary[point]! / size];
		const [a, b] = [curve.real[point]!, curve.imaginary[point]!];
		curve.real[point] = a * c - b * d;
		curve.imaginary[point] = a * d + b * c;
	}

	return curve;
}

/** Tells how well two paths add up; see `judgePairing`. */
export type PairingJudge = typeof judgePairing;

/** A judge of pairings for one ranking: its tables serve all speakers and choices of it. */
export function pairingJudge(): PairingJudge {
	// Cosine and sine of the turn that each delay makes at each grid frequency. As delays are counted in periods of the
	// crossover and frequencies relative to it, one table serves every crossover. Shape (481 × 49), row by row; a row is
	// made when it is first wanted, as a search meets few of them.
	const cosines = new Float64Array((fineSteps + 1) * gridPoints);
	const sines = new Float64Array((fineSteps + 1) * gridPoints);
	const isMade = new Uint8Array(fineSteps + 1);
	const energies = new Float64Array(gridPoints);
	const inPhase = new Float64Array(gridPoints);
	const quadrature = new Float64Array(gridPoints);

	function makeRow(step: number): void {
		for (let point = 0; point < gridPoints; point += 1) {
			const angle = 2 * Math.PI * relativeGrid[point]! * (step / fineSteps - 0.5);
			cosines[step * gridPoints + point] = Math.cos(angle);
			sines[step * gridPoints + point] = Math.sin(angle);
		}

		isMade[step] = 1;
	}

	/** Energies and cross terms of the two sides, written to the arrays above. */
	function prepare(mains: ComplexCurve, sub: ComplexCurve): void {
		for (let point = 0; point < gridPoints; point += 1) {
			const a = mains.real[point]!;
			const b = mains.imaginary[point]!;
			const c = sub.real[point]!;
			const d = sub.imaginary[point]!;
			energies[point] = a * a + b * b + c * c + d * d;
			// 2·Re(conj(mains)·sub·e^(−jθ)) = in phase · cos θ + quadrature · sin θ.
			inPhase[point] = 2 * (a * c + b * d);
			quadrature[point] = 2 * (a * d - b * c);
		}
	}

	/** Ratio of the largest to the smallest energy of the sum, for one row of the table; infinite where it cancels. */
	function rangeAtStep(step: number, sign: number, giveUpAbove: number): number {
		let low = Number.POSITIVE_INFINITY;
		let high = 0;
		const row = step * gridPoints;
		if (isMade[step] === 0) makeRow(step);
		for (let point = 0; point < gridPoints; point += 1) {
			const cross = inPhase[point]! * cosines[row + point]! + quadrature[point]! * sines[row + point]!;
			const energy = energies[point]! + sign * cross;
			if (energy < low) low = energy;
			if (energy > high) high = energy;
			if (high > giveUpAbove * low) return Number.POSITIVE_INFINITY;
		}

		return high / low;
	}

	function rippleAt(periods: number, sign: number): number {
		let low = Number.POSITIVE_INFINITY;
		let high = 0;
		for (let point = 0; point < gridPoints; point += 1) {
			const angle = 2 * Math.PI * relativeGrid[point]! * periods;
			const cross = inPhase[point]! * Math.cos(angle) + quadrature[point]! * Math.sin(angle);
			const energy = energies[point]! + sign * cross;
			if (energy < low) low = energy;
			if (energy > high) high = energy;
		}

		return rangeDb(low, high);
	}

	return judge;

	function judge(
		mains: ComplexCurve,
		sub: ComplexCurve,
		crossoverHertz: number,
		canInvert: boolean,
		offByMs: number,
	): Pairing {
		prepare(mains, sub);
		let best = {step: fineSteps / 2, sign: 1, range: Number.POSITIVE_INFINITY};
		for (const sign of canInvert ? [1, -1] : [1]) {
			let found = {step: fineSteps / 2, sign, range: Number.POSITIVE_INFINITY};
			let [from, to] = [0, fineSteps];
			for (const stride of strides) {
				for (let step = from; step <= to; step += stride) {
					const range = rangeAtStep(step, sign, found.range);
					if (range < found.range) found = {step, sign, range};
				}

				from = Math.max(0, found.step - stride + 1);
				to = Math.min(fineSteps, found.step + stride - 1);
			}

			if (sign === 1 || 10 * Math.log10(best.range / found.range) > 0.1) best = found;
		}

		const periods = best.step / fineSteps - 0.5;
		const rippleDb = rippleAt(periods, best.sign);
		const offPeriods = (offByMs / 1000) * crossoverHertz;
		const worst = Math.max(
			rippleAt(periods - offPeriods, best.sign),
			rippleAt(periods + offPeriods, best.sign),
		);
		return {
			rippleDb,
			subDelayMs: (1000 * periods) / crossoverHertz,
			inverted: best.sign < 0,
			toleranceDb: Math.max(0, worst - rippleDb),
		};
	}
}

/**
How well two paths add through a crossover: the ripple of their complex sum at the best alignment within half a
period, and what a misalignment costs. Pass-band gains are equal.

@param mains - Response of the receiver's high-pass and the speaker on the grid, shape (49).
@param sub - From `subSide`.
@param crossoverHertz - Hertz, > 0; the sum is judged from half to twice of it.
@param canInvert - Whether the sub's polarity may be turned too; taken only where it gains 0.1 dB.
@param offByMs - Misalignment that the tolerance is told for, ms.
*/
export function judgePairing(
	mains: ComplexCurve,
	sub: ComplexCurve,
	crossoverHertz: number,
	canInvert: boolean,
	offByMs: number,
): Pairing {
	return pairingJudge()(mains, sub, crossoverHertz, canInvert, offByMs);
}
