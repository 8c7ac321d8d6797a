import type {AnalogFilter} from './analogFilter.ts';
import {butterworth, type Pass} from './butterworth.ts';
import {linkwitzRiley} from './linkwitzRiley.ts';

/** Kind and order of a filter, as profiles state it. */
export type FilterShape = {readonly kind: 'butterworth' | 'linkwitz-riley'; readonly order: number};

/**
A filter from its stated kind and order.

@throws {RangeError} If the kind has no such order.
*/
export function shapedFilter(pass: Pass, shape: FilterShape, cornerHz: number): AnalogFilter {
	return shape.kind === 'butterworth'
		? butterworth(pass, shape.order, cornerHz)
		: linkwitzRiley(pass, shape.order, cornerHz);
}
