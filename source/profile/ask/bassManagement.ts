import {usualHighPass, usualLowPass} from '../practice.ts';
import type {Profile} from '../types.ts';

type Crossover = NonNullable<Profile['receiver']>['crossover'];
type Shape = {readonly kind: 'butterworth' | 'linkwitz-riley'; readonly order: number};

/** The two filters of bass management, by kind and order. */
export type BassManagement = {readonly highPass: Shape; readonly lowPass: Shape};

const hasOrder = ({kind, order}: Shape) => kind === 'butterworth' || [2, 4, 6, 8].includes(order);

/**
Filters of bass management as the receiver states them, or the usual ones.
A stated Linkwitz-Riley filter of odd order does not exist and counts as not stated.
*/
export function bassManagement(crossover?: Partial<Pick<Crossover, 'highPass' | 'lowPass'>>): BassManagement {
	const {highPass = usualHighPass, lowPass = usualLowPass} = crossover ?? {};
	return {
		highPass: hasOrder(highPass) ? highPass : usualHighPass,
		lowPass: hasOrder(lowPass) ? lowPass : usualLowPass,
	};
}
