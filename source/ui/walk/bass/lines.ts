import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {formatNumber, formatSigned} from '../../../profile/units/decimalText.ts';
import {oldEntry} from '../../../report/bass/oldEntry.ts';
import {cellWidth, fitCells} from '../../../report/fitCells.ts';
import {largeLines} from '../../../report/largeLines.ts';
import {
	addedText,
	blendCautions,
	readingSentences,
	statusSentence,
	wayCost,
	wayName,
	wayOdds,
} from '../../../report/said/blend.ts';
import {amongSubsSentence} from '../../../report/said/pair.ts';
import {wrap} from '../../../report/wrap.ts';
import type {BlendSetting} from '../../../study/calibration/blend/actions.ts';
import type {BlendResult} from '../../../study/calibration/blend/blendResult.ts';
import type {ScreenLine} from '../../parts/lines.tsx';
import {situationOf} from '../dialIn/situation.ts';
import {actionText} from './actionText.ts';
import {blendOf} from './blendOf.ts';
import {pairOddsLines, pairOfferLines, pairPutBack, pairStateLines} from './pairLines.ts';
import {isPairBegun, isPairToDialIn} from './pairPrompts.ts';
import {recordedLines, recordedOf, recordingOddsLines, recordingWayLines} from './recorded.ts';

type Put = (text: string, style?: ScreenLine['style'], sign?: string) => ScreenLine[];

/** The page of the stop Bass: its ways, or how far the chosen one is and what to do with it. */
export function bassLines(profile: Profile, columns: number, isPlain = false): ScreenLine[] {
	const put: Put = (text, style, sign = '') =>
		wrap(text, columns, `  ${sign}`).map((line): ScreenLine => ({text: line, style}));
	const result = blendOf(profile);
	if (result.status === 'nothing')
		return [
			...put('Nothing to blend', 'strong'),
			...put(`${statusSentence(profile, result)} Enter goes on.`),
		];
	const head = put('Do subs and speakers add up?', 'strong');
	const among = amongSubsSentence(result);
	const steps = result.blocks.flatMap(block => block.steps);
	const isBegun =
		steps.some(({isTaken}) => isTaken) || (result.pair !== undefined && isPairBegun(result.pair));
	if (!isBegun) {
		const recorded = recordedLines(profile, columns, isPlain);
		if (recorded.length > 0) return [...head, ...recorded];
		return [
			...head,
			...readingSentences(profile, result).flatMap(text => put(text, 'doubt', '? ')),
			...recordingWayLines(profile, put),
			...put('m  With the meter:', 'value'),
			...wayLines(result, put),
			...pairOfferLines(result, put),
			...put(']  Another day.', 'value'),
			{text: ''},
			...put('What they won in simulated rooms'),
			...recordingOddsLines(profile, put),
			...result.ways.flatMap((way, index) => put(`Meter, ${index + 1}. ${wayOdds(way)}`, 'quiet', '· ')),
			...pairOddsLines(result, put),
			...(among === undefined ? [] : put(among, 'quiet', '· ')),
			{text: ''},
			...blendCautions.flatMap(text => put(text, 'doubt', '▲ ')),
		];
	}

	// That it waits for Dial-in is said with what was kept.
	const said = isPairToDialIn(result) ? {...result, standsApart: false} : result;
	return [
		...head,
		...(recordedOf(profile).kind === 'none' ? [] : recordedLines(profile, columns, isPlain)),
		...pairStateLines(profile, result, put),
		...oldEntryLines(profile, pairPutBack(result)?.setting, columns, put, isPlain),
		...statusLines(profile, result, put),
		...oldEntryLines(
			profile,
			result.status === 'put back' ? result.wanted?.setting : undefined,
			columns,
			put,
			isPlain,
		),
		...readingSentences(profile, said).flatMap(text => put(text, 'doubt', '? ')),
		...blockLines(profile, result, put),
		...frontLines(profile, result, columns, put),
	];
}

function wayLines({ways}: BlendResult, put: Put): ScreenLine[] {
	return ways.flatMap((way, index) =>
		put(`${index + 1}  ${wayName(way)}: ${wayCost(way)}.`, undefined, '   '),
	);
}

function statusLines(profile: Profile, result: BlendResult, put: Put): ScreenLine[] {
	const {status, wanted} = result;
	if (status === 'reading' && isPairFirst(result)) return [];
	const said = statusSentence(profile, result);
	if (status === 'kept') {
		const isOpen = !wanted?.isDecided && situationOf(profile).kind === 'stale';
		return [
			...put(said, 'good', '✓ '),
			...put(isOpen ? 'Enter goes to Dial-in, where it waits to be ticked.' : 'Enter goes on.'),
		];
	}

	if (status === 'stands') return [...put(said, 'good', '✓ '), ...put('Enter goes on.')];
	if (status === 'put back') return put(said, 'strong');
	const actions = status === 'to try' ? (wanted?.setting?.actions ?? []) : [];
	return [
		...put(said, status === 'to try' ? 'strong' : undefined),
		...actions.flatMap(action => put(actionText(profile, action), 'value', '▸ ')),
	];
}

/** Whether the subs against each other are still being read, or wait to be typed in: the fronts come later. */
function isPairFirst(result: BlendResult): boolean {
	const {pair} = result;
	if (!pair || !isPairBegun(pair)) return false;
	return pair.status === 'reading' || pair.status === 'to try' || isPairToDialIn(result);
}

/** The old entries, large: they are typed in again by somebody who is tired. */
function oldEntryLines(
	profile: Profile,
	setting: BlendSetting | undefined,
	columns: number,
	put: Put,
	isPlain: boolean,
): ScreenLine[] {
	if (!setting) return [];
	return [
		...put('Type the old entries in again:'),
		...setting.actions.flatMap(action => {
			const {name, value} = oldEntry(profile, action);
			const large = isPlain ? undefined : largeLines(value, columns - 4);
			return large
				? [...put(name), ...large.map((text): ScreenLine => ({text: `    ${text}`, style: 'value'}))]
				: put(`${name} ${value}`, 'value', '▸ ');
		}),
	];
}

/** What is read under which setting, in the order in which it is asked. */
function blockLines(profile: Profile, {blocks: own, pair}: BlendResult, put: Put): ScreenLine[] {
	const isPair = pair?.status === 'reading' || pair?.status === 'to try';
	const blocks = pair && isPair && isPairBegun(pair) ? pair.blocks : own;
	const now = blocks.findIndex(({steps}) => steps.some(({isTaken}) => !isTaken));
	return blocks.flatMap((block, index) => {
		const taken = block.steps.filter(({isTaken}) => isTaken).length;
		const sign = taken === block.steps.length ? '✓ ' : index === now ? '▸ ' : '· ';
		const actions = block.actions.map(action => actionText(profile, action)).join('; ');
		const what = index === now && actions !== '' ? `: ${actions}` : '';
		return put(
			`${addedText(profile, block)}${what}, ${taken} of ${block.steps.length} read`,
			index === now ? 'strong' : 'quiet',
			sign,
		);
	});
}

const mostBarCells = 24;
/** Margin, two levels, their difference and the blanks between. */
const figureCells = 24;
/** Span of the bars, dB. */
const barSpanDb = 12;

/** Mean level of each front's tones, as it stands and with the setting, as bars and figures. */
function frontLines(profile: Profile, {fronts, tones}: BlendResult, columns: number, put: Put): ScreenLine[] {
	const rows = fronts.flatMap(front => {
		const own = tones.filter(tone => tone.front === front);
		const told = own.flatMap(({standsDb, wantedDb}) =>
			standsDb && wantedDb ? [[standsDb.value, wantedDb.value] as const] : [],
		);
		if (told.length === 0) return [];
		const mean = (at: 0 | 1) => told.reduce((sum, each) => sum + each[at], 0) / told.length;
		return [{front, standsDb: mean(0), wantedDb: mean(1)}];
	});
	if (rows.length === 0) return [];
	const top = Math.max(...rows.flatMap(({standsDb, wantedDb}) => [standsDb, wantedDb]));
	const nameCells = Math.max(...rows.map(({front}) => cellWidth(nameOf(profile, front))));
	const cells = Math.max(0, Math.min(mostBarCells, Math.floor((columns - nameCells - figureCells) / 2)));
	const bar = (level: number) =>
		'█'.repeat(Math.max(0, Math.round(cells * (1 - (top - level) / barSpanDb)))).padEnd(cells, '·');
	return [
		{text: ''},
		...put('Mean of the tones, dB: as it stands, then', 'quiet'),
		...rows.map(
			({front, standsDb, wantedDb}): ScreenLine => ({
				text: `  ${fitCells(nameOf(profile, front), nameCells)}  ${formatNumber(standsDb, 1)} ${bar(standsDb)}  ${formatNumber(wantedDb, 1)} ${bar(wantedDb)}  ${formatSigned(wantedDb - standsDb, 1)}`,
			}),
		),
	];
}
