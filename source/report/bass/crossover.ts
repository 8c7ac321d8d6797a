import type {Profile} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {CrossoverCurves} from '../../study/calibration/crossover/curve.ts';
import type {ChannelCrossover, CrossoverSuggestion} from '../../study/calibration/crossover/result.ts';
import {drawChart} from '../chart.ts';
import {remarkLines} from '../remarks.ts';
import {saidOf, sentenceOf} from '../said/said.ts';
import {sayIn} from '../said/say.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';
import {plainNames} from './names.ts';

export type CrossoverTextOptions = {
	readonly width: number;
	/** Curves of the suggested crossover by channel. */
	readonly curves: ReadonlyMap<string, CrossoverCurves>;
};

const chartRows = 14;
/** What the columns mean. */
const legend =
	'cost: weighs all that follows, the lowest wins. ripple: of speaker and sub together, on paper; 1 ms off: what that adds. at limit: what the high-pass leaves there. cone: its movement against full range.';

/** The crossover ranking as text: channels of one kind of speaker together, each with its reasons, table and curve. */
export function rankingText(
	profile: Profile,
	suggestion: CrossoverSuggestion,
	{width, curves}: CrossoverTextOptions,
): string {
	const alike = new Map<string, {ids: string[]; judged: ChannelCrossover}>();
	for (const [id, judged] of suggestion.channels) {
		const key = JSON.stringify(judged);
		const group = alike.get(key) ?? {ids: [], judged};
		group.ids.push(id);
		alike.set(key, group);
	}

	const {common, lfeLowPassHertz} = suggestion;
	return [
		...wrap(`${profile.name}, ${profile.date}: crossovers`, width),
		...(common ? [`One for all channels: ${formatNumber(common.hertz, 0)} Hz.`] : []),
		...[...alike.values()].flatMap(({ids, judged}) =>
			groupLines(profile, ids, judged, width, curves.get(ids[0]!)),
		),
		...(lfeLowPassHertz === undefined
			? []
			: ['', `Low-pass of the LFE channel: ${formatNumber(lfeLowPassHertz, 0)} Hz.`]),
		...remarkLines(suggestion.remarks, width, sayIn(profile, profile.lengthUnit)),
	].join('\n');
}

function groupLines(
	profile: Profile,
	ids: readonly string[],
	{hertz, reasons, ranking, oneDown, oneUp, fullRange}: ChannelCrossover,
	width: number,
	curves: CrossoverCurves | undefined,
): string[] {
	const say = sayIn(profile, profile.lengthUnit);
	const rows = ranking.map(choice => [
		`${formatNumber(choice.hertz, 0)} Hz`,
		formatNumber(choice.cost, 1),
		`${formatNumber(choice.rippleDb, 1)} dB`,
		`${formatSigned(choice.toleranceDb, 1)} dB`,
		`${formatNumber(choice.driveLeftDb, 1)} dB`,
		`${formatNumber(-choice.excursionReliefDb, 1)} dB`,
		`${formatSigned(choice.subDelayMs, 1)} ms${choice.inverted ? ', inverted' : ''}`,
		choice.belowLimit ? 'too low' : '',
	]);
	return [
		'',
		`${plainNames(profile, ids)}: ${hertz === 'full' ? 'full range' : `${formatNumber(hertz, 0)} Hz`}`,
		...reasons.flatMap(reason => wrap(sentenceOf(reason, say), width, '  ')),
		...wrap(
			`Full range ${fullRange.defensible ? 'is defensible' : 'is not advised'}: ${saidOf(fullRange.why, say)}`,
			width,
			'  ',
		),
		...(oneDown ? wrap(`One step down, ${saidOf(oneDown, say)}`, width, '  ') : []),
		...(oneUp ? wrap(`One step up, ${saidOf(oneUp, say)}`, width, '  ') : []),
		...(ranking.length > 0
			? [
					'',
					...tableLines(
						[
							{title: 'choice', importance: 9, align: 'right'},
							{title: 'cost', importance: 8, align: 'right'},
							{title: 'ripple', importance: 7, align: 'right'},
							{title: '1 ms off', importance: 4, align: 'right'},
							{title: 'at limit', importance: 5, align: 'right'},
							{title: 'cone', importance: 2, align: 'right'},
							{title: 'sub arrives', importance: 6, align: 'right'},
							{title: 'remark', importance: 6.5},
						],
						rows,
						width,
					),
					...wrap(legend, width, '  '),
				]
			: []),
		...(curves && hertz !== 'full' ? chartLines(curves, hertz, width) : []),
	];
}

function chartLines(curves: CrossoverCurves, hertz: number, width: number): string[] {
	const points = (levels: Float64Array) =>
		[...curves.frequenciesHz].map((frequencyHz, index) => ({frequencyHz, levelDb: levels[index]!}));
	return [
		'',
		...drawChart({
			series: [
				{name: 'speaker', points: points(curves.mainsDb)},
				{name: 'sub', points: points(curves.subDb)},
				{name: 'sum', points: points(curves.sumDb)},
			],
			columns: width,
			rows: chartRows,
			fromHz: 20,
			toHz: 400,
			fromDb: -30,
			toDb: 6,
			marks: [{frequencyHz: hertz, label: `${formatNumber(hertz, 0)} Hz`}],
		}),
	];
}
