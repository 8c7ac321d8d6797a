import {atOrAbove, type Grid, nearest, point} from './grid.ts';

export type GatheredChoice = {
	readonly ks: readonly number[];
	/** How many controls lie within one step of each other. */
	readonly together: number;
	/** Sum of squares about the mean. */
	readonly squares: number;
	readonly isExact: boolean;
};

const mostBreakpoints = 20_000;

/**
Chooses a point for every control inside a window that is wider than a step, because limits force it to be:
as many as possible within one step of each other, so that the loss falls on the outlier; then least squares.

For a centre c, each control's best point is its nearest to c; members of the group take the nearest inside the step-wide
group that lies as near to c as the group may. The sum of squares about the mean is the smallest over all c, and the choice
changes only where c passes the middle between two points, so looking between those places is exact.

@param grids - Shape (n ≥ 1); each has a point in the window.
@param start - Where the window begins.
@param end - Where it ends.
@param step - The coarsest step, the width of the group.
*/
export function gatheredChoice(
	grids: readonly Grid[],
	start: number,
	end: number,
	step: number,
): GatheredChoice {
	const inside = grids.map(grid => clipped(grid, start, end));
	let best: GatheredChoice | undefined;
	let isExact = true;
	for (const [groupLow, groupHigh] of groups(inside, step)) {
		const centres = centresOf(inside, start, end, step, groupLow, groupHigh);
		if (centres.length > mostBreakpoints) isExact = false;
		const stride = Math.max(1, Math.ceil(centres.length / mostBreakpoints));
		for (let index = 0; index < centres.length; index += stride) {
			const choice = choiceAbout(inside, centres[index]!, step, groupLow, groupHigh);
			if (!best || isBetter(choice, best, step)) best = choice;
		}
	}

	return {...best!, isExact};
}

function isBetter(a: GatheredChoice, b: GatheredChoice, step: number): boolean {
	return a.together === b.together ? a.squares < b.squares - 1e-9 * step * step : a.together > b.together;
}

/** The control with only those points that lie inside the window. */
function clipped(grid: Grid, start: number, end: number): Grid {
	const kLow = atOrAbove(grid, start)!;
	const kHigh = Math.min(grid.kHigh, Math.floor((end - grid.zero) / grid.step + 1e-6));
	return {...grid, kLow, kHigh: Math.max(kLow, kHigh)};
}

/**
Ranges of u such that the group from u to u + step holds a point of as many controls as possible. No control's step
exceeds the group's width, so a control has a point there when u is from (its lowest − step) to its highest.
*/
function groups(grids: readonly Grid[], step: number): Array<readonly [number, number]> {
	const ends = grids.flatMap(grid => [
		{at: point(grid, grid.kLow) - step * (1 + 1e-6), change: 1},
		{at: point(grid, grid.kHigh) + step * 1e-6, change: -1},
	]);
	ends.sort((a, b) => a.at - b.at || b.change - a.change);
	let count = 0;
	let most = 0;
	let found: Array<readonly [number, number]> = [];
	for (const [index, {at, change}] of ends.entries()) {
		count += change;
		if (count < most || change < 0) continue;
		if (count > most) found = [];
		most = count;
		found.push([at, ends[index + 1]!.at]);
	}

	return found;
}

/** One centre between every two places where some control's choice changes. */
function centresOf(
	grids: readonly Grid[],
	start: number,
	end: number,
	step: number,
	groupLow: number,
	groupHigh: number,
): number[] {
	const breaks = [start, end, groupLow + step / 2, groupHigh + step / 2];
	for (const grid of grids) {
		const last = Math.min(grid.kHigh, grid.kLow + mostBreakpoints);
		for (let k = grid.kLow; k < last; k++) breaks.push(point(grid, k) + grid.step / 2);
	}

	const sorted = Float64Array.from(breaks.filter(at => at >= start && at <= end)).sort();
	const centres: number[] = [start];
	for (let index = 1; index < sorted.length; index++) {
		if (sorted[index]! - sorted[index - 1]! > step * 1e-9)
			centres.push((sorted[index]! + sorted[index - 1]!) / 2);
	}

	centres.push(end);
	return centres;
}

function choiceAbout(
	grids: readonly Grid[],
	centre: number,
	step: number,
	groupLow: number,
	groupHigh: number,
): GatheredChoice {
	const from = Math.min(groupHigh, Math.max(groupLow, centre - step / 2));
	const ks: number[] = [];
	let together = 0;
	let sum = 0;
	let sumOfSquares = 0;
	for (const grid of grids) {
		const inGroup = clippedNearest(grid, centre, from, from + step);
		if (inGroup !== undefined) together++;
		const k = inGroup ?? nearest(grid, centre);
		const position = point(grid, k) - centre;
		ks.push(k);
		sum += position;
		sumOfSquares += position ** 2;
	}

	return {ks, together, squares: Math.max(0, sumOfSquares - sum ** 2 / grids.length), isExact: true};
}

function clippedNearest(grid: Grid, centre: number, from: number, to: number): number | undefined {
	const low = Math.max(grid.kLow, Math.ceil((from - grid.zero) / grid.step - 1e-5));
	const high = Math.min(grid.kHigh, Math.floor((to - grid.zero) / grid.step + 1e-5));
	return low > high ? undefined : Math.min(high, Math.max(low, nearest(grid, centre)));
}
