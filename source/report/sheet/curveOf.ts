import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import {curveFigures, type LevelCurve} from '../../study/hearing/curveFigures.ts';
import type {ProfileCurve} from '../../study/hearing/profileCurves.ts';
import {levelled, referencePair} from '../../study/hearing/roundPairs.ts';
import {extremeText} from '../diff/responseText.ts';

/** The recorded response as the page shows it: in words, and to draw. */
export type SheetCurves = {
	readonly text: string;
	readonly curves: ReadonlyArray<{readonly name: string; readonly curve: LevelCurve}>;
};

/** Sixths of an octave show what the room does. */
const perOctave = 6;

/** The response at the reference seat, before and after where both were recorded; undefined where none was. */
export function sheetCurves(profile: Profile): SheetCurves | undefined {
	const pair = referencePair(profile);
	if (!pair) return undefined;
	const {before, after} = pair;
	const recorded = [...(before ? [before] : []), ...(after ? [after] : [])];
	const names =
		before && after ? ['before', 'after'] : [before ? 'as first recorded' : 'with these settings'];
	const drawn = levelled(
		recorded.map(({curve}) => curve),
		perOctave,
	);
	const said = recorded.map((each, index) => `${names[index]}, ${each.date}: ${wordsOf(each)}`);
	const colour = recorded.every(({isMicrophoneKnown}) => isMicrophoneKnown)
		? ''
		: '. With the recorder’s own colour';
	return {
		text: `Response of ${nameOf(profile, pair.source)} at ${nameOf(profile, pair.seat)}, ${said.join('; ')}${colour}.`,
		curves: drawn.map((curve, index) => ({name: names[index]!, curve})),
	};
}

function wordsOf({curve, isMicrophoneKnown, decaySeconds}: ProfileCurve): string {
	const {dips, peaks} = curveFigures(curve, isMicrophoneKnown);
	const parts = [
		...(dips[0] ? [`dip ${extremeText(dips[0])}`] : []),
		...(peaks[0] ? [`peak ${extremeText(peaks[0])}`] : []),
		...(decaySeconds === undefined ? [] : [`dies away in ${formatNumber(decaySeconds, 2)} s`]),
	];
	return parts.length > 0 ? parts.join(', ') : 'no dip or peak of 3 dB in the bass';
}
