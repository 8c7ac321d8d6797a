/** ln Γ(x) for x > 0, to 1e-14. @see Lanczos, SIAM J. Numer. Anal. 1 (1964) 86; coefficients for g = 7, n = 9 of Godfrey (2001). */
function logGamma(x: number): number {
	const coefficients = [
		0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
		12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
	];
	const shifted = x - 1;
	const t = shifted + 7.5;
	const sum = coefficients.reduce((total, value, k) => (k === 0 ? value : total + value / (shifted + k)), 0);
	return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(t) - t + Math.log(sum);
}

/**
Probability that a chi-square variable with `degrees` degrees of freedom is larger than `value`.

@param value - ≥ 0.
@param degrees - > 0, not necessarily whole.
@returns Between 0 and 1, to about 1e-12.
@throws {RangeError} If an argument is out of range.
@see Abramowitz and Stegun 26.4.19 with 6.5.29 (series) and 6.5.31 (continued fraction).
*/
export function chiSquareUpperTail(value: number, degrees: number): number {
	if (!(value >= 0)) throw new RangeError(`value must be ≥ 0, got ${value}`);
	if (!(degrees > 0)) throw new RangeError(`degrees must be > 0, got ${degrees}`);
	const a = degrees / 2;
	const x = value / 2;
	if (x === 0) return 1;
	if (x === Number.POSITIVE_INFINITY) return 0;
	const front = Math.exp(a * Math.log(x) - x - logGamma(a));
	if (x < a + 1) {
		let term = 1 / a;
		let sum = term;
		for (let k = 1; k < 10_000 && Math.abs(term) > Math.abs(sum) * 1e-16; k++) {
			term *= x / (a + k);
			sum += term;
		}

		return 1 - front * sum;
	}

	// Modified Lentz evaluation of the continued fraction.
	let b = x + 1 - a;
	let c = 1e300;
	let d = 1 / b;
	let h = d;
	for (let k = 1; k < 10_000; k++) {
		const an = -k * (k - a);
		b += 2;
		d = 1 / (an * d + b || 1e-300);
		c = b + an / c || 1e-300;
		const factor = d * c;
		h *= factor;
		if (Math.abs(factor - 1) < 1e-15) break;
	}

	return front * h;
}
