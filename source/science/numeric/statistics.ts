/**
Probability that a standard normal variable is above z.

@param z - Any number; ±Infinity allowed.
@returns 0 to 1, absolute error below 1.2e-7 times the value.
@see Press et al., Numerical Recipes, 2nd ed., section 6.2: Chebyshev fit of the complementary error function.
*/
export function normalTail(z: number): number {
	const x = Math.abs(z) / Math.SQRT2;
	const t = 1 / (1 + x / 2);
	const coefficients = [
		-1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587,
		-0.82215223, 0.17087277,
	];
	const exponent = coefficients.reduceRight((sum, coefficient) => sum * t + coefficient, 0);
	const tail = x === Number.POSITIVE_INFINITY ? 0 : (t * Math.exp(-(x ** 2) + exponent)) / 2;
	return z >= 0 ? tail : 1 - tail;
}

/**
Combined standard uncertainty of a sum of independent contributions, to first order.

@param contributions - Shape (n), each a sensitivity times a standard uncertainty, in one unit.
@returns Root of the sum of squares, in the same unit; 0 for none.
@see JCGM 100:2008 (GUM), eq. 10.
*/
export function combinedSigma(...contributions: readonly number[]): number {
	return Math.hypot(...contributions);
}

/**
Middle of a list: the middle value, or the mean of the two middle values.

@param values - Shape (n ≥ 1); the list is left as it is.
@throws {RangeError} If the list is empty.
*/
export function median(values: readonly number[]): number {
	if (values.length === 0) throw new RangeError('values must hold at least one number, got none');
	const sorted = Float64Array.from(values).sort();
	const middle = (sorted.length - 1) / 2;
	return (sorted[Math.floor(middle)]! + sorted[Math.ceil(middle)]!) / 2;
}

/**
Standard deviation of a sample about its mean, with n − 1.

@param values - Shape (n).
@returns In the unit of the values; 0 for fewer than two.
*/
export function sampleDeviation(values: readonly number[]): number {
	if (values.length < 2) return 0;
	const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
	return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
