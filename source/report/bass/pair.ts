import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import type {BlendResult} from '../../study/calibration/blend/blendResult.ts';
import type {PairResult} from '../../study/calibration/blend/pair/pairResult.ts';
import {readingSentences} from '../said/blend.ts';
import {pairOdds, pairOffer, pairOutdates, pairReadingSentences, pairStatus} from '../said/pair.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';
import {actionSentence} from './names.ts';
import {oldEntryTexts} from './oldEntry.ts';
import {toneCells} from './toneCells.ts';
import {toReadNext} from './toReadNext.ts';

/** Two subs against each other as text: what it takes, what was read, what to try, what to read next. */
export function subsPairText(profile: Profile, result: BlendResult, width: number): string {
	const {seat, pair, standsApart} = result;
	if (!pair)
		return wrap(
			'There are not two subs, or groups of them, that a box sets apart and whose distances are known, or a recording has set them. Nothing is asked for.',
			width,
		).join('\n');
	const {status, blocks} = pair;
	const isDone = status === 'kept' || status === 'put back' || status === 'stands';
	const apart = standsApart ? readingSentences(profile, result) : [];
	return [
		...wrap(`${profile.name}, ${profile.date}, at ${nameOf(profile, seat)}`, width),
		'',
		...wrap(pairOffer(pair), width),
		...wrap(pairOdds(pair), width),
		...toneTable(pair, width),
		'',
		...wrap(pairStatus(profile, pair), width),
		...settingLines(profile, pair, width),
		...[...pairReadingSentences(pair), ...apart].flatMap(text => wrap(text, width, '  ? ')),
		...(pairOutdates(pair) === '' || isDone ? [] : wrap(pairOutdates(pair), width, '  ? ')),
		...toReadNext(profile, {blocks, seat, isDone}, width),
	].join('\n');
}

function settingLines(profile: Profile, {status, wanted}: PairResult, width: number): string[] {
	if (status === 'put back') return oldEntryTexts(profile, wanted?.setting?.actions ?? [], width);
	if (status !== 'to try' || !wanted) return [];
	return (wanted.setting?.actions ?? []).flatMap(action =>
		wrap(actionSentence(profile, action), width, '  > '),
	);
}

function toneTable({tones}: PairResult, width: number): string[] {
	if (tones.length === 0) return [];
	const rows = tones.map(tone => toneCells(tone, 'turned'));
	return [
		'',
		...tableLines(
			[
				{title: 'tone', importance: 8, align: 'right'},
				{title: 'read, dB at ms between them', importance: 5, leastCells: 12},
				{title: 'stands', importance: 6, align: 'right'},
				{title: 'then', importance: 7, align: 'right'},
			],
			rows,
			width,
		),
	];
}
