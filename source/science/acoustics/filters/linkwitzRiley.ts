import {type AnalogFilter, cascade} from './analogFilter.ts';
import {butterworth, type Pass} from './butterworth.ts';

/**
Linkwitz-Riley low-pass or high-pass: two equal Butterworth filters of half the order, −6.02 dB at the corner.

@param pass - Which side passes.
@param order - 2, 4, 6 or 8.
@param cornerHz - Hertz, > 0.
@throws {RangeError} If the order is odd or out of range, or the corner is not positive.
@see S. H. Linkwitz, JAES 24 (1976) 2–8.
*/
export function linkwitzRiley(pass: Pass, order: number, cornerHz: number): AnalogFilter {
	if (![2, 4, 6, 8].includes(order))
		throw new RangeError(`order of a Linkwitz-Riley filter must be 2, 4, 6 or 8, got ${order}`);
	const half = butterworth(pass, order / 2, cornerHz);
	return cascade(half, half);
}
