import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {formatNumber, formatSigned} from '../../../profile/units/decimalText.ts';
import {blendChart} from '../../../report/bass/blendChart.ts';
import {chartText, drawChart} from '../../../report/chart.ts';
import {fitCells} from '../../../report/fitCells.ts';
import {sentenceOf} from '../../../report/said/said.ts';
import {wrap} from '../../../report/wrap.ts';
import type {BlendPairResult} from '../../../study/calibration/blend/blend.ts';
import {blendCurves} from '../../../study/calibration/blend/curves.ts';
import type {BlendStep} from '../../../study/calibration/blend/steps.ts';
import type {Line} from '../../parts/lines.tsx';
import {situationOf} from '../dialIn/situation.ts';
import {sayFor} from '../sayFor.ts';
import {actionText} from './actionText.ts';
import {blendOf} from './blendOf.ts';

/** Minutes that one tone reading takes with its handling; common practice, no source. */
const minutesEach = 1.5;
const tableCells = 10;
const chartRows = 14;

/** The page of the stop Bass: what it is for, or what the tones told so far and what to do with it. */
export function bassLines(profile: Profile, columns: number, isPlain = false): Line[] {
	const put = (text: string, style?: Line['style'], sign = '') =>
		wrap(text, columns, `  ${sign}`).map((line): Line => ({text: line, style}));
	const {result, steps} = blendOf(profile);
	const open = steps.filter(({taken}) => taken === 0);
	if (steps.length === 0) {
		return [
			...put('Nothing to blend', 'strong'),
			...put('The profile has no subs, or no speakers to blend them with. Enter goes on.'),
		];
	}

	const taken = steps.length - open.length;
	const head = [
		...put('Do subs and speakers add up?', 'strong'),
		...put(`${taken} of ${steps.length} tones read.`, 'quiet'),
	];
	if (taken === 0) {
		return [
			...head,
			...put(
				`Through the crossover both play at once. ${steps.length} readings of tones tell how late the subs are and which way round; about ${Math.ceil((steps.length * minutesEach) / 5) * 5} minutes.`,
			),
			...put('Enter begins; ] leaves it for another day.'),
			{text: ''},
			...result.cautions.flatMap(text => put(text, 'doubt', '▲ ')),
		];
	}

	const goOn =
		open.length > 0
			? put(`Enter goes on with the tones: ${open.length} left.`)
			: situationOf(profile).kind === 'stale'
				? put('Enter goes to Dial-in, where the changed values wait to be typed in.')
				: put('✓ The settings hold what the tones want. Enter goes on.', 'good');
	const remarks = result.remarks.filter(({kind}) => kind !== 'note');
	return [
		...head,
		...goOn,
		...remarks.flatMap(remark => put(sentenceOf(remark, sayFor(profile)), 'doubt', '? ')),
		...result.pairs.flatMap(pair => [
			...pairLines(profile, pair, open, columns),
			...chartLines(profile, pair, columns, isPlain),
		]),
	];
}

function pairLines(
	profile: Profile,
	pair: BlendPairResult,
	open: readonly BlendStep[],
	columns: number,
): Line[] {
	const put = (text: string, style?: Line['style'], sign = '') =>
		wrap(text, columns, `  ${sign}`).map((line): Line => ({text: line, style}));
	const names = (ids: readonly string[]) => ids.map(id => nameOf(profile, id)).join(', ');
	const [answer, ...others] = pair.minima;
	const lines: Line[] = [
		{text: ''},
		...put(
			`${names(pair.moved)} with ${names(pair.still)}, crossover ${formatNumber(pair.crossoverHertz, 0)} Hz`,
			'strong',
		),
		...toneTable(pair, columns),
	];
	if (answer) {
		const late = answer.arrivalMs >= 0 ? 'later' : 'earlier';
		const way = answer.inverted ? ', the other way round' : '';
		lines.push(
			...put(
				`${names(pair.moved)}: ${formatNumber(Math.abs(answer.arrivalMs), 1)} ms ${late} (± ${formatNumber(answer.sigmaMs, 1)})${way}.`,
			),
		);
	}

	if (answer && others.length > 0)
		lines.push(
			...put(`${others.length + 1} answers fit alike; the next tone tells them apart.`, 'doubt', '? '),
		);
	if (pair.setting && others.length === 0) {
		const actions = pair.setting.actions;
		lines.push(
			...(actions.length === 0
				? put('Nothing to change.', 'good', '✓ ')
				: actions.flatMap(action => put(actionText(profile, action), 'value', '▸ '))),
		);
	}

	if (pair.expected && others.length === 0) {
		const {hertz, nowDb, thenDb} = pair.expected;
		lines.push(
			...put(
				`At ${formatNumber(hertz, 0)} Hz both together gain ${formatSigned(thenDb - nowDb, 1)} dB. The stop Proof reads it again.`,
			),
		);
	}

	const remarks = pair.remarks.filter(({kind, code}) => kind !== 'note' && code !== 'several-answers');
	lines.push(...remarks.flatMap(remark => put(sentenceOf(remark, sayFor(profile)), 'doubt', '? ')));
	const next = open.find(step => step.pair === pair.id && step.part === 'separate');
	if (next)
		lines.push(...put(`Next: both at ${next.hertz} Hz, with ${formatSigned(next.addedDelayMs, 1)} ms.`));
	return lines;
}

/** What filters, boxes and the delay found make of both, now and with the setting; in words for a screen reader. */
function chartLines(profile: Profile, pair: BlendPairResult, columns: number, isPlain: boolean): Line[] {
	const curves = pair.minima.length === 1 ? blendCurves(profile, pair) : undefined;
	if (!curves) return [];
	const options = blendChart(profile, pair, curves, {columns: columns - 2, rows: chartRows});
	const lines = isPlain ? chartText(options).flatMap(text => wrap(text, columns - 2)) : drawChart(options);
	return [{text: ''}, ...lines.map((text): Line => ({text: `  ${text}`.trimEnd()}))];
}

/** Levels without weighting, alone and together, tone by tone; both with each delay that was added. */
function toneTable({tones}: BlendPairResult, columns: number): Line[] {
	if (tones.length === 0) return [];
	const titles = ['tone', 'one side', 'subs', 'both', 'gain', 'added'];
	const rows = tones.flatMap(({hertz, stillDb, movedDb, readings}) => {
		const alone = [`${formatNumber(hertz, 0)} Hz`, formatNumber(stillDb, 1), formatNumber(movedDb, 1)];
		if (readings.length === 0) return [[...alone, '', '', '']];
		return readings.map(({bothDb, addedMs}, index) => [
			...(index === 0 ? alone : ['', '', '']),
			formatNumber(bothDb, 1),
			formatSigned(bothDb - Math.max(stillDb, movedDb), 1),
			Math.abs(addedMs) < 0.005 ? '' : `${formatSigned(addedMs, 1)} ms`,
		]);
	});
	return [titles, ...rows].map((row, index): Line => {
		const text = `  ${row.map(cell => fitCells(cell, tableCells, 'right')).join('')}`.trimEnd();
		return {text: fitCells(text, columns).trimEnd(), style: index === 0 ? 'quiet' : undefined};
	});
}
