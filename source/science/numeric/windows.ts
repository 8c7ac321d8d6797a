import {atOrAbove, type Grid, highest, lowest, point} from './grid.ts';
import {smallestArc} from './smallestArc.ts';

export type BestWindows = {
	/** Width of the smallest window that holds a point of every control. */
	readonly width: number;
	/** Where windows of that width begin. */
	readonly starts: readonly number[];
	/** Whether every window that could be smaller was looked at. */
	readonly isComplete: boolean;
};

/** Candidates looked at before the search is cut short; a room's controls have a few thousand. */
const mostCandidates = 200_000;

/**
Finds the smallest windows that hold at least one point of every control.

A smallest window begins at a point. It begins at or below B, the smallest of the highest points, and less than the
coarsest step below A, the largest of the lowest points, or at B where A lies above. Between those ends the pattern of
a common step repeats, so two steps about offset zero say it all; with unequal steps the search widens from zero
until the bound that each step's own controls set is reached.

@param grids - Shape (n ≥ 1).
@param indifference - Farther than two coarsest steps from offset zero, a window counts only if it is smaller by more
than this, ≥ 0.
*/
export function bestWindows(grids: readonly Grid[], indifference: number): BestWindows {
	const coarsest = Math.max(...grids.map(({step}) => step));
	const highestLow = Math.max(...grids.map(lowest));
	const lowestHigh = Math.min(...grids.map(highest));
	const from = Math.min(lowestHigh, highestLow - coarsest);
	const bound = lowerBound(grids, highestLow - lowestHigh);
	const centre = Math.min(lowestHigh, Math.max(from, -bound.width / 2));
	const tolerance = coarsest * 1e-9;
	let margin = 0;
	let width = Number.POSITIVE_INFINITY;
	let starts: number[] = [];
	let candidates = 0;
	const look = (start: number) => {
		candidates++;
		const found = windowFrom(grids, start, width + tolerance - margin);
		if (found === undefined) return;
		if (found < width - tolerance) starts = [];
		width = Math.min(width, found);
		starts.push(start);
	};

	let reachedLow = centre;
	let reachedHigh = centre;
	for (let reach = 2 * coarsest; ; reach *= 2) {
		const low = Math.max(from, centre - reach);
		const high = Math.min(lowestHigh, centre + reach);
		const isFirst = reachedLow === reachedHigh;
		for (const grid of grids) {
			if (isFirst) eachPoint(grid, low, high, look);
			else {
				eachPoint(grid, low, reachedLow, look);
				eachPoint(grid, reachedHigh, high, look);
			}

			if (candidates > mostCandidates) return {width, starts, isComplete: false};
		}

		reachedLow = low;
		reachedHigh = high;
		margin = indifference;
		if (bound.isReachable || width <= bound.width + tolerance + indifference) break;
		if (low <= from && high >= lowestHigh) break;
	}

	return {width, starts, isComplete: true};
}

/** No window is smaller than what the controls of one step need among themselves, nor than the limits force. */
function lowerBound(grids: readonly Grid[], forced: number): {width: number; isReachable: boolean} {
	const bySteps = new Map<number, number[]>();
	for (const {step, zero, kLow, kHigh} of grids) {
		// A control with a single point says nothing about its step.
		if (kLow === kHigh) continue;
		const zeros = bySteps.get(step);
		if (zeros) zeros.push(zero);
		else bySteps.set(step, [zero]);
	}

	let width = Math.max(0, forced);
	for (const [step, zeros] of bySteps) width = Math.max(width, smallestArc(zeros, step));
	const isCommonStep = bySteps.size === 1 && grids.every(({kLow, kHigh}) => kLow !== kHigh);
	return {width, isReachable: isCommonStep};
}

/** Width of the window from `start` on, or nothing where a control has no point there or it exceeds `limit`. */
function windowFrom(grids: readonly Grid[], start: number, limit: number): number | undefined {
	let end = start;
	for (const grid of grids) {
		const k = atOrAbove(grid, start);
		if (k === undefined) return undefined;
		const position = point(grid, k);
		if (position - start > limit) return undefined;
		if (position > end) end = position;
	}

	return end - start;
}

function eachPoint(grid: Grid, low: number, high: number, look: (position: number) => void): void {
	const kFrom = Math.max(grid.kLow, Math.ceil((low - grid.zero) / grid.step - 1e-6));
	const kTo = Math.min(grid.kHigh, Math.floor((high - grid.zero) / grid.step + 1e-6));
	const last = Math.min(kTo, kFrom + mostCandidates);
	for (let k = kFrom; k <= last; k++) look(point(grid, k));
}
