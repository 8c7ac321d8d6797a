import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import type {BlendResult} from '../../study/calibration/blend/blendResult.ts';
import type {RecordedState} from '../../study/hearing/recordedState.ts';
import type {OfferedRecording} from '../../study/playing/offeredRecording.ts';
import {readingSentences, statusSentence, wayCost, wayName, wayOdds} from '../said/blend.ts';
import {amongSubsSentence, pairOdds, pairOffer, pairStatus} from '../said/pair.ts';
import {recordingCost, recordingOdds, recordingWayName} from '../said/recorded.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';
import {actionSentence} from './names.ts';
import {oldEntryTexts} from './oldEntry.ts';
import {recordedStateLines} from './recordedState.ts';
import {toneCells} from './toneCells.ts';
import {toReadNext} from './toReadNext.ts';

/** The way by recording as it is offered. */
export type RecordingOffer = {
	readonly takes: OfferedRecording;
	readonly odds: Parameters<typeof recordingOdds>[0];
};

/** The blend of subs and front speakers as text: ways, what was read, what to try, what to read next. */
export function blendText(
	profile: Profile,
	result: BlendResult,
	width: number,
	recorded: RecordedState = {kind: 'none'},
	recording?: RecordingOffer,
): string {
	const {seat, crossoverHertz, status, blocks} = result;
	const isDone = status === 'kept' || status === 'put back' || status === 'stands';
	const title = `${profile.name}, ${profile.date}: subs and front speakers through the crossover at ${formatNumber(crossoverHertz, 0)} Hz, at ${nameOf(profile, seat)}`;
	return [
		...wrap(title, width),
		...(recorded.kind === 'none'
			? recordingLines(profile, recording, width)
			: ['', ...recordedStateLines(profile, recorded, width)]),
		...wayLines(profile, result, width),
		...toneTable(profile, result, width),
		'',
		...wrap(statusSentence(profile, result), width),
		...settingLines(profile, result, width),
		...readingSentences(profile, result).flatMap(text => wrap(text, width, '  ? ')),
		...(status === 'nothing' ? [] : toReadNext(profile, {blocks, seat, isDone}, width)),
	].join('\n');
}

/** The way by recording, first: what it takes, how it is begun, and what it won. */
function recordingLines(profile: Profile, offer: RecordingOffer | undefined, width: number): string[] {
	if (!offer) return [];
	const {takes, odds} = offer;
	const cost = recordingCost(takes.playings, takes.changes, takes.minutes);
	const won = recordingOdds(
		odds,
		profile.channels.some(({id}) => id === 'FC'),
	);
	return ['', ...wrap(`${recordingWayName} (signals --round, then hear): ${cost}. ${won}`, width, '  ')];
}

function wayLines(profile: Profile, result: BlendResult, width: number): string[] {
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
				...pairLines(profile, result, width),
			];
}

/** The extra before it, as it is offered or how far it is. */
function pairLines(profile: Profile, {pair, blocks}: BlendResult, width: number): string[] {
	if (!pair) return [];
	const isBegun = pair.blocks.some(({steps}) => steps.some(({isTaken}) => isTaken));
	if (isBegun || pair.status === 'kept') return wrap(pairStatus(profile, pair), width, '  ');
	// Once the fronts are being read it comes too late.
	if (blocks.some(({steps}) => steps.some(({isTaken}) => isTaken))) return [];
	return wrap(`Before them, --pair: ${pairOffer(pair)} ${pairOdds(pair)}`, width, '  ');
}

function toneTable(profile: Profile, {tones, status}: BlendResult, width: number): string[] {
	if (tones.length === 0) return [];
	const isTried = status === 'kept' || status === 'put back';
	const rows = tones.map(tone => [nameOf(profile, tone.front), ...toneCells(tone, 'inverted')]);
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
	if (status === 'put back') return oldEntryTexts(profile, wanted.setting.actions, width);
	if (wanted.isDecided) return [];
	return wanted.setting.actions.flatMap(action => wrap(actionSentence(profile, action), width, '  > '));
}
