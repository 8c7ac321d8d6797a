import type {Cause, Part} from './profileDiff.ts';

/**
Splits the change of a product exactly between its two factors: Δ(a·b) = b̄·Δa + ā·Δb with the means of before and after.

No factor is favoured by being changed first (the Shapley value of two players).

@see Shapley, A value for n-person games (1953).
*/
export function productParts(
	[aBefore, bBefore]: readonly [number, number],
	[aAfter, bAfter]: readonly [number, number],
): readonly [number, number] {
	return [((bBefore + bAfter) / 2) * (aAfter - aBefore), ((aBefore + aAfter) / 2) * (bAfter - bBefore)];
}

/** Half a millionth of any step: smaller parts are the noise of binary arithmetic. */
const nothing = 1e-9;

/** Parts in the order given, those that are nothing left out. */
export function partsOf(amounts: ReadonlyArray<readonly [Cause, number]>): Part[] {
	return amounts
		.filter(([, amount]) => Math.abs(amount) > nothing)
		.map(([cause, amount]) => ({cause, amount}));
}

/** What lies between a computed value and the value that the box took. */
export type RoundingSide = {
	readonly exact: number;
	readonly stepped: number;
	/** Shift that the joint rounding gave all values of the box alike. */
	readonly sharedShift: number;
	readonly step: number;
	readonly minimum: number;
	readonly maximum: number;
};

/** The share of a range's end and of the steps in one value's rounding. */
export function roundingOf(side: RoundingSide): {readonly limits: number; readonly rounding: number} {
	const own = side.stepped - side.exact - side.sharedShift;
	const isAtEnd =
		side.stepped <= side.minimum + side.step * 1e-6 || side.stepped >= side.maximum - side.step * 1e-6;
	return isAtEnd && Math.abs(own) > side.step * (1 + 1e-6)
		? {limits: own, rounding: 0}
		: {limits: 0, rounding: own};
}
