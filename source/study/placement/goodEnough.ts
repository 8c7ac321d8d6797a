import type {Profile} from '../../profile/types.ts';

/** How far a thing stands from its plan along the floor, and whether that is within what costs next to nothing. */
export type FloorMiss = {
	readonly offMetres: number;
	/** Undefined where the plan does not say what costs nothing. */
	readonly isGoodEnough: boolean | undefined;
};

/**
The one rule for what stands near enough to its plan: both directions along the floor together; height is not planned to a
hand's breadth.

@param offsMetres - Along directions at right angles; what was not read yet is left out.
*/
export function floorMiss({planned}: Pick<Profile, 'planned'>, offsMetres: readonly number[]): FloorMiss {
	const offMetres = Math.hypot(...offsMetres);
	const within = planned?.withinMetres;
	return {offMetres, isGoodEnough: within === undefined ? undefined : offMetres <= within};
}
