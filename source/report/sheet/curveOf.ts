import {nameOf} from '../../profile/names.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import type {SheetData} from '../../study/comparison/sheetData.ts';
import type {LevelCurve} from '../../study/hearing/curveFigures.ts';
import type {LevelledRecording} from '../../study/hearing/roundPairs.ts';
import {extremeText} from '../diff/responseText.ts';

/** The recorded response as the page shows it: in words, and to draw. */
export type SheetCurves = {
	readonly text: string;
	readonly curves: ReadonlyArray<{readonly name: string; readonly curve: LevelCurve}>;
};

/** The response at the reference seat, before and after where both were recorded; undefined where none was. */
export function sheetCurves({
	profile,
	response,
}: Pick<SheetData, 'profile' | 'response'>): SheetCurves | undefined {
	if (!response) return undefined;
	const {source, seat, recorded} = response;
	const names = recorded.map(({round}) =>
		recorded.length > 1
			? round === 'proof'
				? 'after'
				: 'before'
			: round === 'proof'
				? 'with these settings'
				: 'as first recorded',
	);
	const said = recorded.map((each, index) => `${names[index]}, ${each.date}: ${wordsOf(each)}`);
	const colour = recorded.every(({isMicrophoneKnown}) => isMicrophoneKnown)
		? ''
		: '. With the recorder’s own colour';
	return {
		text: `Response of ${nameOf(profile, source)} at ${nameOf(profile, seat)}, ${said.join('; ')}${colour}.`,
		curves: recorded.map(({curve}, index) => ({name: names[index]!, curve})),
	};
}

function wordsOf({figures, decaySeconds}: LevelledRecording): string {
	const {dips, peaks} = figures;
	const parts = [
		...(dips[0] ? [`dip ${extremeText(dips[0])}`] : []),
		...(peaks[0] ? [`peak ${extremeText(peaks[0])}`] : []),
		...(decaySeconds === undefined ? [] : [`dies away in ${formatNumber(decaySeconds, 2)} s`]),
	];
	return parts.length > 0 ? parts.join(', ') : 'no dip or peak of 3 dB in the bass';
}
