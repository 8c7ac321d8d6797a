import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {BlendResult} from '../../study/calibration/blend/blendResult.ts';
import type {BlendBlock} from '../../study/calibration/blend/steps.ts';
import type {RecordedState} from '../../study/hearing/recordedState.ts';
import {
	addedText,
	amongSubsSentence,
	blendCautions,
	blendSignalText,
	blockSentence,
	howToRead,
	readingSentences,
	statusSentence,
	wayCost,
	wayName,
	wayOdds,
} from '../said/blend.ts';
import {capitalised} from '../said/sentences.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';
import {actionSentence, plainNames} from './names.ts';
import {recordedStateLines} from './recordedState.ts';

/** The blend of subs and front speakers as text: ways, what was read, what to try, what to read next. */
export function blendText(
	profile: Profile,
	result: BlendResult,
	width: number,
	recorded: RecordedState = {kind: 'none'},
): string {
	const {seat, crossoverHertz, status} = result;
	const title = `${profile.name}, ${profile.date}: subs and front speakers through the crossover at ${formatNumber(crossoverHertz, 0)} Hz, at ${nameOf(profile, seat)}`;
	return [
		...wrap(title, width),
		...(recorded.kind === 'none' ? [] : ['', ...recordedStateLines(profile, recorded, width)]),
		...wayLines(result, width),
		...toneTable(profile, result, width),
		'',
		...wrap(statusSentence(profile, result), width),
		...settingLines(profile, result, width),
		...readingSentences(profile, result).flatMap(text => wrap(text, width, '  ? ')),
		...(status === 'nothing' ? [] : nextLines(profile, result, width)),
	].join('\n');
}

function wayLines(result: BlendResult, width: number): string[] {
	const {ways, way} = result;
	const among = amongSubsSentence(result);
	return ways.length === 0
		? []
		: [
				'',
				...ways.flatMap(offered => [
					...wrap(
						`${wayName(offered)} (--way ${offered.way}): ${wayCost(offered)}. ${wayOdds(offered)}`,
						width,
						offered.way === way ? '> ' : '  ',
					),
				]),
				...(among === undefined ? [] : wrap(among, width, '  ')),
			];
}

function toneTable(profile: Profile, {tones, status}: BlendResult, width: number): string[] {
	if (tones.length === 0) return [];
	const isTried = status === 'kept' || status === 'put back';
	const level = (estimate: {readonly value: number} | undefined) =>
		estimate ? formatNumber(estimate.value, 1) : '';
	const rows = tones.map(({front, hertz, readings, standsDb, wantedDb}) => [
		nameOf(profile, front),
		`${formatNumber(hertz, 0)} Hz`,
		readings
			.map(
				({laterMs, inverted, levelDb}) =>
					`${formatNumber(levelDb, 1)} at ${formatSigned(laterMs, 1)}${inverted ? ' inverted' : ''}`,
			)
			.join(', '),
		level(standsDb),
		level(wantedDb),
	]);
	return [
		'',
		...tableLines(
			[
				{title: 'into', importance: 9},
				{title: 'tone', importance: 8, align: 'right'},
				{title: 'read, dB at ms', importance: 5, leastCells: 12},
				// Where it was tried, what stood then need not stand now.
				{title: isTried ? 'before' : 'stands', importance: 6, align: 'right'},
				{title: 'then', importance: 7, align: 'right'},
			],
			rows,
			width,
		),
	];
}

function settingLines(profile: Profile, {status, wanted}: BlendResult, width: number): string[] {
	if (!wanted || status === 'nothing') return [];
	if (!wanted.setting)
		return wrap(
			'No box delays the subs apart from the speakers. Use the phase control of each sub.',
			width,
			'  ? ',
		);
	if (wanted.isDecided || status === 'put back') return [];
	return wanted.setting.actions.flatMap(action => wrap(actionSentence(profile, action), width, '  > '));
}

function nextLines(profile: Profile, {blocks, status, seat}: BlendResult, width: number): string[] {
	const open = blocks
		.map(block => ({...block, steps: block.steps.filter(({isTaken}) => !isTaken)}))
		.filter(({steps}) => steps.length > 0);
	const count = open.reduce((sum, {steps}) => sum + steps.length, 0);
	if (count === 0) return [];
	if (status === 'kept' || status === 'put back' || status === 'stands')
		return ['', ...wrap(`${count} more readings would be surer; none is needed.`, width)];
	return [
		'',
		`Next: ${count} readings at ${nameOf(profile, seat)}`,
		...blendCautions.flatMap(caution => wrap(caution, width, '  ! ')),
		...wrap(howToRead, width, '  '),
		...open.flatMap((block, index) => blockLines(profile, block, index, width)),
	];
}

function blockLines(profile: Profile, block: BlendBlock, index: number, width: number): string[] {
	// One line a speaker: its tones, or its noise with how often.
	const into = new Map<string, string[]>();
	for (const {signal, playInto} of block.steps) {
		const names = plainNames(profile, playInto);
		into.set(names, [...(into.get(names) ?? []), blendSignalText(signal)]);
	}

	const read = [...into].map(([names, signals]) => {
		const once = [...new Set(signals)];
		const times = signals.length === once.length ? '' : `, ${signals.length} times`;
		return `${once.join(', ')} into ${names}${times}`;
	});
	const number = `${String(index + 1).padStart(2)}. `;
	return [
		...wrap(`${capitalised(addedText(block))}. ${blockSentence(block)}`, width, number),
		...block.actions.flatMap(action => wrap(actionSentence(profile, action), width, '    > ')),
		...wrap(`${read.join('; ')}.`, width, '    '),
	];
}
