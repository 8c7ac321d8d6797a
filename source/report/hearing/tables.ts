import {listed, nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {HearingFinding} from '../../study/hearing/facts.ts';
import type {HeardState} from '../../study/hearing/heardState.ts';
import type {ShownLine, ShownRound, ShownRow} from '../../study/hearing/shown.ts';
import {headOf} from '../said/said.ts';
import type {Say} from '../said/say.ts';
import {tableLines} from '../table.ts';

function stateText({kind, ...rest}: HeardState): string {
	if (kind !== 'delayed') return kind === 'turned' ? 'subs turned' : kind === 'muted' ? 'subs muted' : kind;
	const {ms, isTurned} = rest as Extract<HeardState, {kind: 'delayed'}>;
	return `subs ${formatSigned(ms, 1)} ms${isTurned ? ', turned' : ''}`;
}

function changedText(profile: Profile, {state, changed}: ShownRow): string {
	if (changed.length === 0) return stateText(state);
	return `${listed(changed.flatMap(id => id.split('+')).map(id => nameOf(profile, id)))} changed`;
}

/** What a table on a screen marks. */
export type Marks = {
	/** Row that the cursor stands on. */
	readonly cursor?: number;
	/** Channels that are not to be taken. */
	readonly leftOut?: readonly string[];
};

const cursorMark = ({cursor}: Marks, at: number) => (cursor === undefined ? '' : cursor === at ? '›' : ' ');

/** Playings as a table: which seat, which state, what is wrong. */
export function playingLines(
	profile: Profile,
	rows: readonly ShownRow[],
	say: Say,
	width: number,
	marks: Marks = {},
): string[] {
	return tableLines(
		[
			{title: '', importance: 10},
			{title: '#', importance: 9, align: 'right'},
			{title: 'seat', importance: 8},
			{title: 'state', importance: 7},
			{title: 'clock', importance: 2, align: 'right'},
			{title: 'peak', importance: 3, align: 'right'},
			{title: 'what is wrong', importance: 6, leastCells: 20},
		],
		rows.map((row, at) => {
			const {playing} = row;
			const worst = [...playing.findings, ...row.findings].filter(({kind}) => kind !== 'note');
			return [
				cursorMark(marks, at),
				String(row.index + 1),
				row.seat === undefined
					? 'spare'
					: row.isUsed
						? nameOf(profile, row.seat)
						: `${nameOf(profile, row.seat)}, spare`,
				changedText(profile, row),
				`${formatSigned(playing.clockPpm, 0)} ppm`,
				`${formatNumber(20 * Math.log10(Math.max(playing.peak, 1e-6)), 0)} dBFS`,
				worst.length === 0 ? 'nothing' : headOf(worst.find(({kind}) => kind === 'problem') ?? worst[0]!, say),
			];
		}),
		width,
	);
}

/** What was heard at one seat, line by line, with a verdict each. */
export function seatLines(
	profile: Profile,
	{seat, base, isApart, apartBy}: ShownRound,
	findings: readonly HearingFinding[],
	say: Say,
	width: number,
	marks: Marks = {},
): string[] {
	const {lines, findings: own} = base.playing;
	const mean = meanLevel(lines);
	return [
		`${nameOf(profile, seat)}${isApart ? `, mains and subs told apart${apartBy === 'lfe' ? ' by the LFE sweep' : ''}` : ''}`,
		...tableLines(
			[
				{title: '', importance: 10},
				{title: 'line', importance: 9},
				{title: 'arrives', importance: 8, align: 'right'},
				{title: 'sign', importance: 7},
				{title: 'level', importance: 6, align: 'right'},
				{title: 'decay', importance: 4, align: 'right'},
				{title: 'noise below', importance: 2, align: 'right'},
				{title: 'verdict', importance: 5, leastCells: 16},
			],
			lines.map((line, at) => {
				const about = [...findings, ...own].find(
					each => each.about.includes(line.channel) && each.kind !== 'note',
				);
				const decay = line.decays.find(({hertz}) => hertz === 500)?.t20Seconds;
				return [
					cursorMark(marks, at),
					nameOf(profile, line.channel),
					line.delayMs === undefined || line.isSub ? '' : `${formatSigned(line.delayMs, 2)} ms`,
					line.polarity === undefined ? '' : line.polarity.sign > 0 ? '+' : '−',
					line.levelDb === undefined || line.isSub ? '' : `${formatSigned(line.levelDb - mean, 1)} dB`,
					decay === undefined ? '' : `${formatNumber(decay, 2)} s`,
					line.onset ? `${formatNumber(line.noiseBelowDb, 0)} dB` : '',
					marks.leftOut?.includes(line.channel)
						? 'left out'
						: about
							? headOf(about, say)
							: line.onset
								? 'sound'
								: 'silent',
				];
			}),
			width,
		),
	];
}

function meanLevel(lines: readonly ShownLine[]): number {
	const levels = lines.flatMap(({isSub, levelDb}) => (isSub || levelDb === undefined ? [] : [levelDb]));
	return levels.length === 0 ? 0 : levels.reduce((sum, value) => sum + value, 0) / levels.length;
}
