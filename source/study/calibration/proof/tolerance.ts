import {normalTail} from '../../../science/numeric/statistics.ts';

/**
Number of standard uncertainties that the largest of several residuals exceeds by chance in one clean round of so many.

Šidák: 1 − (1 − α)^(1/n) for each of n two-sided tests.

@param count - Readings in the round, ≥ 1.
@param chance - α, share of clean rounds in which any residual may go beyond, 0 < α < 1.
@see Šidák, JASA 62 (1967) 626; quantiles against scipy.stats.norm.isf in the test.
*/
export function criticalValue(count: number, chance: number): number {
	const each = (1 - (1 - chance) ** (1 / count)) / 2;
	let low = 0;
	let high = 10;
	for (let step = 0; step < 60; step++) {
		const middle = (low + high) / 2;
		if (normalTail(middle) > each) low = middle;
		else high = middle;
	}

	return (low + high) / 2;
}
