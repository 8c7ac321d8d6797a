import {normalTail} from './statistics.ts';

/**
The value above which a standard normal variable lies with a given probability.

@param probability - Above 0 and at most ½.
@returns 0 or more, to about 1e-6.
@throws {RangeError} If the probability is out of range.
*/
export function normalQuantileAbove(probability: number): number {
	if (!(probability > 0 && probability <= 0.5))
		throw new RangeError(`probability must be above 0 and at most 0.5, got ${probability}`);
	let low = 0;
	let high = 40;
	// Each halving adds a binary digit: 2⁻³⁰ of 40 is below what the tail itself is known to.
	for (let round = 0; round < 30; round++) {
		const middle = (low + high) / 2;
		if (normalTail(middle) > probability) low = middle;
		else high = middle;
	}

	return (low + high) / 2;
}
