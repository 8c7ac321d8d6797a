/**
A value wanted and what a control can be set to instead: `anchor + k · step` within the limits.
The anchor is the minimum, which a control can always show, or else the maximum, or else zero.
*/
export type GridItem = {
	readonly exact: number;
	readonly step: number;
	readonly minimum?: number;
	readonly maximum?: number;
	/** What the control stands at now; among equally good answers the one with the smallest change is taken. */
	readonly current?: number;
};

/** Where the points of one control lie relative to its exact value: `first + k · step`, k from `kLow` to `kHigh`. */
export type Grid = {
	readonly anchor: number;
	readonly step: number;
	/** Position of the point k = 0 minus the exact value. */
	readonly zero: number;
	readonly kLow: number;
	readonly kHigh: number;
};

/** Decimal steps are not exact in binary; a point that misses a limit by less than this part of a step still counts. */
const slack = 1e-6;

/**
Points of a control relative to its exact value.

@throws {RangeError} If the step is not positive, a number is not finite, or the minimum exceeds the maximum.
*/
export function gridOf(item: GridItem, index: number): Grid {
	const {exact, step} = item;
	const minimum = item.minimum ?? Number.NEGATIVE_INFINITY;
	const maximum = item.maximum ?? Number.POSITIVE_INFINITY;
	if (!Number.isFinite(exact)) throw new RangeError(`items[${index}].exact must be finite, got ${exact}`);
	if (!(step > 0 && Number.isFinite(step)))
		throw new RangeError(`items[${index}].step must be finite and > 0, got ${step}`);
	if (!(minimum <= maximum))
		throw new RangeError(`items[${index}].minimum must not exceed maximum, got ${minimum} and ${maximum}`);
	const anchor = Number.isFinite(minimum) ? minimum : Number.isFinite(maximum) ? maximum : 0;
	return {
		anchor,
		step,
		zero: anchor - exact,
		kLow: Math.ceil((minimum - anchor) / step - slack),
		kHigh: Math.floor((maximum - anchor) / step + slack),
	};
}

/** Position of point k, relative to the exact value. */
export function point(grid: Grid, k: number): number {
	return grid.zero + k * grid.step;
}

export function lowest(grid: Grid): number {
	return point(grid, grid.kLow);
}

export function highest(grid: Grid): number {
	return point(grid, grid.kHigh);
}

/** The k of the smallest allowed point at or above a position; `undefined` where there is none. */
export function atOrAbove(grid: Grid, position: number): number | undefined {
	const k = Math.max(grid.kLow, Math.ceil((position - grid.zero) / grid.step - slack));
	return k > grid.kHigh ? undefined : k;
}

/** The k of the allowed point nearest to a position; of two equally near ones the lower. */
export function nearest(grid: Grid, position: number): number {
	const k = Math.ceil((position - grid.zero) / grid.step - 0.5 - slack);
	return Math.min(grid.kHigh, Math.max(grid.kLow, k));
}

/** The value that the control shows at point k, free of binary crumbs such as 0.30000000000000004. */
export function shownValue(grid: Grid, k: number): number {
	const value = Number((grid.anchor + k * grid.step).toPrecision(12));
	// At zero a crumb is all that there is, and digits do not tell it.
	return Math.abs(value) < slack * grid.step ? 0 : value;
}
