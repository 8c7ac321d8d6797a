import {chiSquareUpperTail} from '../../../science/numeric/chiSquare.ts';
import {fitTone, type ToneFit} from './toneChiSquare.ts';
import type {BlendTone} from './tones.ts';

/** One answer that the readings allow. */
export type BlendMinimum = {
	/** Arrival of the moved group after the still one under the standing settings, ms. */
	readonly arrivalMs: number;
	/** Standard uncertainty from the curve of χ², ms. */
	readonly sigmaMs: number;
	/** Whether the two stand in opposite polarity under the standing settings. */
	readonly inverted: boolean;
	readonly chiSquare: number;
	/** All arrivals about this one that the readings allow at 95 %, ms. */
	readonly fromMs: number;
	readonly toMs: number;
	/** Levels that fit best, tone by tone. */
	readonly tones: readonly ToneFit[];
};

export type BlendFit = {
	/** Best first; every one within 4 of the smallest χ² (times `scale`), and more where many share the probability. Empty without readings of both. */
	readonly minima: readonly BlendMinimum[];
	readonly degreesOfFreedom: number;
	/** Chance of so bad a fit by the meter's noise alone; 1 without redundancy. */
	readonly probability: number;
	/** Factor on variances where the fit is worse than noise explains; else 1. */
	readonly scale: number;
};

export const searchMs = 15;
/** Step of the search; at 200 Hz a twenty-fifth of a period. */
const coarseMs = 0.2;
/** On so fine a grid a minimum lies no deeper below its lowest point than this, generously, and it spares most of them. */
const worthDescending = (lowest: number) => 3 * lowest + 60;
const listedWithin = 4;
/** Answers further off than this have no weight, in χ². */
const weighedWithin = 25;
/** What Δχ² = 4 holds of one normal quantity. */
const claimed = 0.9545;
/** A fit less probable than this is not put down to noise. */
const badFit = 0.01;

/** Smallest value of a function between two ends about a point that is lower than both. */
function descend(of: (x: number) => number, low: number, high: number): number {
	const golden = (Math.sqrt(5) - 1) / 2;
	let [from, to] = [low, high];
	let [left, right] = [to - golden * (to - from), from + golden * (to - from)];
	let [atLeft, atRight] = [of(left), of(right)];
	while (to - from > 1e-4) {
		if (atLeft <= atRight) {
			[to, right, atRight] = [right, left, atLeft];
			left = to - golden * (to - from);
			atLeft = of(left);
		} else {
			[from, left, atLeft] = [left, right, atRight];
			right = from + golden * (to - from);
			atRight = of(right);
		}
	}

	return (from + to) / 2;
}

/** Where a rising function passes a height, walking from a point below it; the end of the search where it never does. */
function crossing(of: (x: number) => number, start: number, direction: 1 | -1, height: number): number {
	let inside = start;
	for (;;) {
		const next = inside + direction * coarseMs;
		if (Math.abs(next) > searchMs) return direction * searchMs;
		if (of(next) > height) {
			let outside = next;
			while (Math.abs(outside - inside) > 1e-3) {
				const middle = (inside + outside) / 2;
				if (of(middle) > height) outside = middle;
				else inside = middle;
			}

			return (inside + outside) / 2;
		}

		inside = next;
	}
}

/**
Height above the smallest χ² below which the answers together hold 95.45 % of the probability, every arrival and both
polarities being equally likely beforehand. With one narrow answer it is 4; with several of similar standing it is
more, because the best of many is better by chance.

Each answer counts as a normal curve of its own width.
*/
function credibleHeight(
	peaks: ReadonlyArray<{readonly chiSquare: number; readonly sigmaMs: number}>,
	smallest: number,
	scale: number,
): number {
	const share = (height: number) => {
		let inside = 0;
		let total = 0;
		for (const {chiSquare, sigmaMs} of peaks) {
			const depth = (chiSquare - smallest) / scale;
			const mass = sigmaMs * Math.exp(-depth / 2);
			total += mass;
			if (height > depth) inside += mass * (1 - chiSquareUpperTail(height - depth, 1));
		}

		return inside / total;
	};

	let [low, high] = [0, weighedWithin];
	while (high - low > 1e-3) {
		const middle = (low + high) / 2;
		if (share(middle) < claimed) low = middle;
		else high = middle;
	}

	return high;
}

/**
Arrival and polarity of one group of speakers against another from levels alone, by a search through every arrival
within 15 ms and both polarities.

The phase shows in the level of both together only by its cosine, which is even: readings at one delay leave mirror
answers. All that the noise allows are listed.

@param tones - Shape (n); tones without a reading of both add nothing.
*/
export function fitBlend(tones: readonly BlendTone[]): BlendFit {
	const used = tones.filter(({both}) => both.length > 0);
	const readings = used.reduce((sum, {both}) => sum + both.length, 0);
	if (readings === 0) return {minima: [], degreesOfFreedom: 0, probability: 1, scale: 1};
	const chiSquare = (arrivalMs: number, inverted: boolean) => {
		let sum = 0;
		for (const tone of used) sum += fitTone(tone, arrivalMs, inverted).chiSquare;
		return sum;
	};

	const steps = Math.round((2 * searchMs) / coarseMs);
	const arrivalAt = (step: number) => -searchMs + step * coarseMs;
	const found: Array<{arrivalMs: number; inverted: boolean; chiSquare: number}> = [];
	for (const inverted of [false, true]) {
		let lowest = Number.POSITIVE_INFINITY;
		const curve = Float64Array.from({length: steps + 1}, (_, step) => {
			let sum = 0;
			for (const tone of used) {
				sum += fitTone(tone, arrivalAt(step), inverted, 0.05).chiSquare;
				if (sum > worthDescending(lowest)) break;
			}

			lowest = Math.min(lowest, sum);
			return sum;
		});
		for (let step = 0; step <= steps; step += 1) {
			const value = curve[step]!;
			const isLow =
				value <= (curve[step - 1] ?? value) && value < (curve[step + 1] ?? Number.POSITIVE_INFINITY);
			if (!isLow || value > worthDescending(lowest)) continue;
			const of = (x: number) => chiSquare(x, inverted);
			const low = Math.max(-searchMs, arrivalAt(step - 1));
			const arrivalMs = descend(of, low, Math.min(searchMs, arrivalAt(step + 1)));
			found.push({arrivalMs, inverted, chiSquare: of(arrivalMs)});
		}
	}

	found.sort(
		(one, other) => one.chiSquare - other.chiSquare || Math.abs(one.arrivalMs) - Math.abs(other.arrivalMs),
	);
	if (found.length === 0) return {minima: [], degreesOfFreedom: readings - 1, probability: 0, scale: 1};
	const smallest = found[0]!.chiSquare;
	const degreesOfFreedom = readings - 1;
	const probability = degreesOfFreedom > 0 ? chiSquareUpperTail(smallest, degreesOfFreedom) : 1;
	const scale = probability < badFit ? smallest / degreesOfFreedom : 1;
	const peaks = found
		.filter(candidate => candidate.chiSquare <= smallest + weighedWithin * scale)
		.map(({arrivalMs, inverted, chiSquare: at}) => {
			const of = (x: number) => chiSquare(x, inverted);
			const left = crossing(of, arrivalMs, -1, at + scale);
			const right = crossing(of, arrivalMs, 1, at + scale);
			return {arrivalMs, inverted, chiSquare: at, sigmaMs: (right - left) / 2, of};
		});
	const height = smallest + scale * Math.max(listedWithin, credibleHeight(peaks, smallest, scale));
	const minima = peaks
		.filter(peak => peak.chiSquare <= height)
		.map(({of, ...peak}) => ({
			...peak,
			fromMs: crossing(of, peak.arrivalMs, -1, height),
			toMs: crossing(of, peak.arrivalMs, 1, height),
			tones: tones.map(tone => fitTone(tone, peak.arrivalMs, peak.inverted)),
		}));
	return {minima, degreesOfFreedom, probability, scale};
}
