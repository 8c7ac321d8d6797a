import type {Profile} from '../../profile/types.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import type {BlendPairResult} from '../../study/calibration/blend/blend.ts';
import type {BlendCurves} from '../../study/calibration/blend/curves.ts';
import type {ChartOptions} from '../chart.ts';
import {plainNames} from './names.ts';

/** The curves of one pair as a chart: each side, and both together now and with the setting. */
export function blendChart(
	profile: Profile,
	pair: BlendPairResult,
	curves: BlendCurves,
	size: Pick<ChartOptions, 'columns' | 'rows'>,
): ChartOptions {
	const {frequenciesHz} = curves;
	const points = (levels: Float64Array) =>
		[...frequenciesHz].map((frequencyHz, index) => ({frequencyHz, levelDb: levels[index]!}));
	return {
		...size,
		series: [
			{name: plainNames(profile, pair.still), points: points(curves.stillDb)},
			{name: plainNames(profile, pair.moved), points: points(curves.movedDb)},
			{name: 'both now', points: points(curves.nowDb)},
			{name: 'both then', points: points(curves.thenDb)},
		],
		fromHz: frequenciesHz[0]!,
		toHz: frequenciesHz.at(-1)!,
		fromDb: -30,
		toDb: 10,
		marks: [{frequencyHz: pair.crossoverHertz, label: `${formatNumber(pair.crossoverHertz, 0)} Hz`}],
	};
}
