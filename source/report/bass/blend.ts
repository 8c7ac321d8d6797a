import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {BlendPairResult, BlendResult} from '../../study/calibration/blend/blend.ts';
import type {BlendCurves} from '../../study/calibration/blend/curves.ts';
import type {BlendStep} from '../../study/calibration/blend/steps.ts';
import {drawChart} from '../chart.ts';
import {remarkLines} from '../remarks.ts';
import {sayIn} from '../said/say.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';
import {blendChart} from './blendChart.ts';
import {actionSentence, pairName, plainNames} from './names.ts';

export type BlendTextOptions = {
	readonly width: number;
	/** Curves of each pair by its id; none are drawn where not given. */
	readonly curves: ReadonlyMap<string, BlendCurves>;
};

const chartRows = 14;

/** The blend of subs and mains as text: what was read, what it means, what to set, what to read next. */
export function blendText(profile: Profile, result: BlendResult, {width, curves}: BlendTextOptions): string {
	const remarks = [...result.remarks, ...result.pairs.flatMap(pair => pair.remarks)];
	const sourceName = (id: string) => {
		const pair = result.pairs.find(candidate => candidate.id === id);
		return pair ? pairName(profile, pair) : nameOf(profile, id);
	};
	return [
		...wrap(
			`${profile.name}, ${profile.date}: subs and speakers through the crossover, at ${nameOf(profile, result.seat)}`,
			width,
		),
		...result.pairs.flatMap(pair => pairLines(profile, pair, width, curves.get(pair.id))),
		...stepLines(profile, result, width),
		...remarkLines(remarks, width, {...sayIn(profile, profile.lengthUnit), name: sourceName}),
	].join('\n');
}

function pairLines(
	profile: Profile,
	pair: BlendPairResult,
	width: number,
	curves: BlendCurves | undefined,
): string[] {
	return [
		'',
		`${pairName(profile, pair)}, ${pair.kind === 'mains' ? 'crossover' : 'about'} ${formatNumber(pair.crossoverHertz, 0)} Hz`,
		...toneTable(profile, pair, width),
		...answerLines(profile, pair, width),
		...settingLines(profile, pair, width),
		...(curves
			? ['', ...drawChart(blendChart(profile, pair, curves, {columns: width, rows: chartRows}))]
			: []),
	];
}

function toneTable(profile: Profile, pair: BlendPairResult, width: number): string[] {
	const rows = pair.tones.flatMap(({hertz, stillDb, movedDb, readings}) => {
		const alone = [`${formatNumber(hertz, 0)} Hz`, formatNumber(stillDb, 1), formatNumber(movedDb, 1)];
		if (readings.length === 0) return [[...alone, '', '', '']];
		return readings.map(({addedMs, bothDb, cosine, verdict}) => [
			...alone,
			`${formatSigned(addedMs, 1)} ms`,
			formatNumber(bothDb, 1),
			verdict === 'fine' ? formatNumber(cosine, 2) : verdict,
		]);
	});
	return tableLines(
		[
			{title: 'tone', importance: 9, align: 'right'},
			{title: plainNames(profile, pair.still), importance: 7, align: 'right', leastCells: 6},
			{title: plainNames(profile, pair.moved), importance: 6, align: 'right', leastCells: 6},
			{title: 'added', importance: 5, align: 'right'},
			{title: 'both', importance: 8, align: 'right'},
			{title: 'cos φ', importance: 4, align: 'right'},
		],
		rows,
		width,
	);
}

function answerLines(profile: Profile, pair: BlendPairResult, width: number): string[] {
	const moved = plainNames(profile, pair.moved);
	return pair.minima.flatMap(({arrivalMs, sigmaMs, fromMs, toMs, inverted}, index) =>
		wrap(
			`${index === 0 ? moved : 'or'} ${formatNumber(Math.abs(arrivalMs), 1)} ms ${arrivalMs < 0 ? 'early' : 'late'} (± ${formatNumber(sigmaMs, 1)}; 95 %: ${formatSigned(fromMs, 1)} to ${formatSigned(toMs, 1)} ms), ${inverted ? 'in opposite polarity' : 'in the same polarity'}.`,
			width,
		),
	);
}

function settingLines(
	profile: Profile,
	{setting, expected, confirm, minima}: BlendPairResult,
	width: number,
): string[] {
	if (!setting) return [];
	const actions =
		setting.actions.length > 0
			? setting.actions.flatMap(action => wrap(actionSentence(profile, action), width, '  > '))
			: ['  > Nothing to change.'];
	return [
		...(minima.length > 1 ? ['By the first answer:'] : []),
		...actions,
		...(expected
			? wrap(
					`Both together at ${formatNumber(expected.hertz, 0)} Hz: ${formatNumber(expected.nowDb, 1)} dB now, ${formatNumber(expected.thenDb, 1)} dB then (${formatSigned(expected.thenDb - expected.nowDb, 1)} dB).`,
					width,
				)
			: []),
		...wrap(
			`To confirm, read both with it set: ${confirm.map(({hertz, predictedDb, weighting}) => `${formatNumber(hertz, 0)} Hz ${formatNumber(predictedDb.value, 1)} ± ${formatNumber(predictedDb.sigma, 1)} dB(${weighting})`).join(', ')}.`,
			width,
		),
	];
}

function stepLines(profile: Profile, {steps, cautions}: BlendResult, width: number): string[] {
	if (steps.length === 0) return [];
	const blocks = new Map<string, BlendStep[]>();
	for (const step of steps) {
		const key = `${step.pair}\n${step.prepare}`;
		blocks.set(key, [...(blocks.get(key) ?? []), step]);
	}

	return [
		'',
		`Next: ${steps.length} readings at ${nameOf(profile, steps[0]!.seat)}`,
		...cautions.flatMap(caution => wrap(caution, width, '  ! ')),
		...wrap(steps[0]!.how, width, '  '),
		...[...blocks.values()].flatMap((block, index) => [
			...wrap(block[0]!.prepare, width, `${String(index + 1).padStart(2)}. `),
			...wrap(
				`Tones into ${nameOf(profile, block[0]!.playInto)}: ${block.map(({hertz}) => `${formatNumber(hertz, 0)} Hz`).join(', ')}. ${block[0]!.why}`,
				width,
				'    ',
			),
		]),
	];
}
