import type {BassManagement} from '../../../profile/ask/bassManagement.ts';
import {assumedSubLimitHertz} from '../../../profile/practice.ts';
import {type AnalogFilter, cascade, throughFilter} from '../../../science/acoustics/filters/analogFilter.ts';
import {type BoxData, boxFilter} from '../../../science/acoustics/filters/box.ts';
import {butterworth} from '../../../science/acoustics/filters/butterworth.ts';
import {shapedFilter} from '../../../science/acoustics/filters/shape.ts';

export type SubModel = {
	/** Low end of the sub. */
	readonly low: AnalogFilter;
	/** Upper end of the sub: second-order low-pass, half power at its stated limit. */
	readonly high: AnalogFilter;
};

/** What is taken for a sub's low end where its limit is not known. */
export function subBox(sub: BoxData | undefined): BoxData {
	return sub?.lowLimitHertz === undefined ? {lowLimitHertz: assumedSubLimitHertz, box: 'vented'} : sub;
}

/**
One model for all subs together: the lowest upper limit given, and the low end of the first that states one, or the
usual. Without subs nothing is in the way.
*/
export function subModel(
	subs: ReadonlyArray<BoxData & {readonly upperLimitHertz?: number | undefined}>,
): SubModel {
	const limits = subs.flatMap(({upperLimitHertz}) =>
		upperLimitHertz === undefined ? [] : [upperLimitHertz],
	);
	const lowEnd = subs.find(({lowLimitHertz}) => lowLimitHertz !== undefined);
	return {
		low: subs.length > 0 ? boxFilter(subBox(lowEnd)) : throughFilter,
		high: limits.length > 0 ? butterworth('low', 2, Math.min(...limits)) : throughFilter,
	};
}

/**
All that a high-passed speaker goes through, receiver and box.

@param crossoverHertz - Hertz, or `full` for no high-pass.
*/
export function mainsPath(
	speaker: AnalogFilter,
	management: BassManagement,
	crossoverHertz: number | 'full',
): AnalogFilter {
	return crossoverHertz === 'full'
		? speaker
		: cascade(shapedFilter('high', management.highPass, crossoverHertz), speaker);
}

/** What redirected bass goes through up to the top of the sub, the sub's own low end left out. */
export function subPath(sub: SubModel, management: BassManagement, crossoverHertz: number): AnalogFilter {
	return cascade(shapedFilter('low', management.lowPass, crossoverHertz), sub.high);
}
