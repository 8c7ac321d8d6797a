import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {CurveFigures, LevelCurve} from '../../study/hearing/curveFigures.ts';
import {drawChart} from '../chart.ts';
import {chartText} from '../chartText.ts';
import {wrap} from '../wrap.ts';

/** A curve as it is shown: a title that says what it is of, levels smoothed already, figures of the whole. */
export type ShownCurve = {
	readonly title: string;
	readonly curve: LevelCurve;
	readonly figures: CurveFigures;
	readonly decaySeconds?: number;
	readonly isMicrophoneKnown: boolean;
};

const inHertz = (hertz: number) =>
	hertz >= 1000 ? `${formatNumber(hertz / 1000, 1)} kHz` : `${formatNumber(hertz, 0)} Hz`;

/** Figures of one curve in a sentence or two. */
function figureText({figures, decaySeconds, isMicrophoneKnown}: ShownCurve): string {
	const {dips, peaks, deviationDb, tiltDbPerOctave, lowLimitHertz} = figures;
	const listOf = (name: string, places: CurveFigures['dips']) =>
		places.length === 0
			? []
			: [
					`${name} ${places.map(({hertz, aboveDb}) => `${formatSigned(aboveDb, 0)} dB at ${inHertz(hertz)}`).join(', ')}`,
				];
	const parts = [
		...listOf('dips in the bass', dips),
		...listOf('peaks in the bass', peaks),
		...(deviationDb === undefined
			? []
			: [`within ±${formatNumber(deviationDb, 1)} dB from 200 Hz to 10 kHz`]),
		...(tiltDbPerOctave === undefined ? [] : [`${formatSigned(tiltDbPerOctave, 1)} dB per octave`]),
		...(lowLimitHertz === undefined ? [] : [`reaches down to ${inHertz(lowLimitHertz)}`]),
		...(decaySeconds === undefined ? [] : [`dies away in ${formatNumber(decaySeconds, 2)} s`]),
		...(isMicrophoneKnown ? [] : ['with the recorder’s own colour']),
	];
	return parts.length === 0 ? 'nothing stands out' : parts.join('; ');
}

/** Curves drawn or in words, then their figures, and how far a pair lies apart. */
export function curveLines(
	curves: readonly ShownCurve[],
	options: {
		readonly width: number;
		readonly rows: number;
		readonly isInWords: boolean;
		readonly distanceDb?: number;
	},
): string[] {
	const {width, rows, isInWords, distanceDb} = options;
	const top = Math.max(...curves.map(({curve}) => curve.frequenciesHz.at(-1) ?? 200));
	const chart = {
		series: curves.map(({title, curve}) => ({
			name: title,
			points: [...curve.frequenciesHz].map((frequencyHz, index) => ({
				frequencyHz,
				levelDb: curve.levelsDb[index]!,
			})),
		})),
		columns: width,
		rows,
		fromHz: 15,
		toHz: top,
	};
	return [
		...(isInWords ? chartText(chart).flatMap(line => wrap(line, width)) : drawChart(chart)),
		'',
		...curves.flatMap(each => wrap(`${each.title}: ${figureText(each)}.`, width)),
		...(distanceDb === undefined
			? []
			: wrap(`Apart by ${formatNumber(distanceDb, 1)} dB on average in the bass, levels taken off.`, width)),
	];
}
