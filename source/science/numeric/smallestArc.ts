/**
Width of the smallest arc of a circle that holds all values, once each is taken modulo the circumference:
the circumference less the largest gap between neighbours.

For values to be rounded on one common step without limits this is the least possible largest pairwise error.

@param values - Shape (n), any finite numbers.
@param circumference - > 0, in the same unit.
@returns 0 for fewer than two values; always less than the circumference.
*/
export function smallestArc(values: readonly number[], circumference: number): number {
	if (values.length < 2) return 0;
	const sorted = Float64Array.from(
		values,
		value => value - Math.floor(value / circumference) * circumference,
	).sort();
	let largestGap = sorted[0]! + circumference - sorted.at(-1)!;
	for (let index = 1; index < sorted.length; index++) {
		largestGap = Math.max(largestGap, sorted[index]! - sorted[index - 1]!);
	}

	return Math.max(0, circumference - largestGap);
}
