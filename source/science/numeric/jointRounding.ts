import {gatheredChoice} from './gatheredChoice.ts';
import {type Grid, type GridItem, gridOf, highest, lowest, nearest, point, shownValue} from './grid.ts';
import {bestWindows} from './windows.ts';

export type {GridItem} from './grid.ts';

export type JointRounding = {
	/** Shape (n): what each control is set to. */
	readonly stepped: readonly number[];
	/** The shift that all have in common: middle of the largest and the smallest of stepped − exact. */
	readonly offset: number;
	/** Largest difference between any two of stepped − exact. */
	readonly worstPairwiseError: number;
	/** Whether the limits leave room: false where they, and not the steps, cause the error. */
	readonly fits: boolean;
	/** False only where steps so fine over ranges so wide were given that the search was cut short. */
	readonly isOptimal: boolean;
};

/**
Rounds several values to the steps of their controls so that their differences suffer least.

Only differences count, so a common offset is free. The choice is, in this order: smallest largest pairwise error;
where the limits do not leave room, as many as possible within one (the coarsest) step of each other, then the smallest
sum of squares about the mean; the offset nearest to zero; the smallest change from what the controls stand at.

@param items - Shape (n), all in one unit.
@param indifference - An offset farther than two coarsest steps from zero is taken only if the error shrinks by more
than this, ≥ 0; with unequal steps it would else be taken for a difference that nobody can measure.
@returns Empty for no items. For one item the point nearest to it.
@throws {RangeError} If a step is not positive, a value not finite, or a minimum above its maximum.
*/
export function jointRounding(items: readonly GridItem[], indifference = 0): JointRounding {
	if (items.length === 0) return {stepped: [], offset: 0, worstPairwiseError: 0, fits: true, isOptimal: true};
	const grids = items.map((item, index) => gridOf(item, index));
	const coarsest = Math.max(...grids.map(({step}) => step));
	const found = bestWindows(grids, indifference);
	const hasRoom = Math.max(...grids.map(lowest)) <= Math.min(...grids.map(highest)) + coarsest * 1e-6;
	const fits = hasRoom || found.width < coarsest * (1 - 1e-6);
	let best: Rounding | undefined;
	let isOptimal = found.isComplete;
	for (const start of found.starts) {
		const gathered = fits ? undefined : gatheredChoice(grids, start, start + found.width, coarsest);
		if (gathered?.isExact === false) isOptimal = false;
		const ks = gathered?.ks ?? middleChoice(grids, start, start + found.width);
		const choice = judged(items, grids, ks, gathered);
		if (!best || isBetter(choice, best, coarsest)) best = choice;
	}

	const {ks, offset, worst} = best!;
	return {
		stepped: ks.map((k, index) => shownValue(grids[index]!, k)),
		offset,
		worstPairwiseError: worst,
		fits,
		isOptimal,
	};
}

type Rounding = {
	readonly ks: readonly number[];
	readonly offset: number;
	readonly worst: number;
	readonly together: number;
	readonly squares: number;
	readonly change: number;
};

/** Each control at its point nearest to the middle of the window, which holds one, so the nearest lies in it. */
function middleChoice(grids: readonly Grid[], start: number, end: number): number[] {
	return grids.map(grid => nearest(grid, (start + end) / 2));
}

function judged(
	items: readonly GridItem[],
	grids: readonly Grid[],
	ks: readonly number[],
	gathered: {readonly together: number; readonly squares: number} | undefined,
): Rounding {
	let low = Number.POSITIVE_INFINITY;
	let high = Number.NEGATIVE_INFINITY;
	let change = 0;
	for (const [index, k] of ks.entries()) {
		const position = point(grids[index]!, k);
		low = Math.min(low, position);
		high = Math.max(high, position);
		const {current} = items[index]!;
		if (current !== undefined) change += Math.abs(grids[index]!.anchor + k * grids[index]!.step - current);
	}

	return {
		ks,
		offset: (low + high) / 2,
		worst: high - low,
		together: gathered?.together ?? 0,
		squares: gathered?.squares ?? 0,
		change,
	};
}

function isBetter(a: Rounding, b: Rounding, coarsest: number): boolean {
	const tolerance = coarsest * 1e-7;
	if (Math.abs(a.worst - b.worst) > tolerance) return a.worst < b.worst;
	if (a.together !== b.together) return a.together > b.together;
	if (Math.abs(a.squares - b.squares) > tolerance * coarsest) return a.squares < b.squares;
	const offsetDifference = Math.abs(a.offset) - Math.abs(b.offset);
	if (Math.abs(offsetDifference) > tolerance) return offsetDifference < 0;
	return a.change < b.change - tolerance;
}
