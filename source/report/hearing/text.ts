import {listed, nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {HearingFinding} from '../../study/hearing/facts.ts';
import type {HeardLine} from '../../study/hearing/heardPlaying.ts';
import type {HeardState} from '../../study/hearing/heardState.ts';
import type {ProfileBlend} from '../../study/hearing/profileBlend.ts';
import type {PlayingRow, SeatRound} from '../../study/hearing/seatRound.ts';
import {headOf, sentenceOf} from '../said/said.ts';
import {type Say, sayIn} from '../said/say.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';

/** What `hear` shows. */
export type HeardText = {
	readonly rows: readonly PlayingRow[];
	readonly rounds: readonly SeatRound[];
	/** By recording: its base name, what is wrong with it as a whole, and how many playings it holds. */
	readonly files: ReadonlyArray<{
		readonly name: string;
		readonly seconds: number;
		readonly sampleRateHz: number;
		readonly playings: number;
		readonly findings: readonly HearingFinding[];
	}>;
	/** Findings about lines, held against tape and twins. */
	readonly findings: readonly HearingFinding[];
	readonly blend?: ProfileBlend;
	readonly isTaken: boolean;
};

function stateText({kind, ...rest}: HeardState): string {
	if (kind !== 'delayed') return kind === 'turned' ? 'subs turned' : kind === 'muted' ? 'subs muted' : kind;
	const {ms, isTurned} = rest as Extract<HeardState, {kind: 'delayed'}>;
	return `subs ${formatSigned(ms, 1)} ms${isTurned ? ', turned' : ''}`;
}

function changedText(profile: Profile, {state, changed}: PlayingRow): string {
	if (changed.length === 0) return stateText(state);
	return `${listed(changed.flatMap(id => id.split('+')).map(id => nameOf(profile, id)))} changed`;
}

/** Everything that was heard, as lines. */
export function heardLines(profile: Profile, heard: HeardText, width: number): string[] {
	const say = sayIn(profile, profile.lengthUnit);
	return [
		...heard.files.flatMap(file => [
			...wrap(
				`${file.name}: ${formatNumber(file.seconds, 0)} s, ${formatNumber(file.sampleRateHz / 1000, 1)} kHz, ${file.playings === 1 ? '1 playing' : `${file.playings} playings`}`,
				width,
			),
			...file.findings.flatMap(each => wrap(sentenceOf(each, say), width, '  ')),
		]),
		...(heard.rows.length > 0 ? ['', ...playingLines(profile, heard.rows, say, width)] : []),
		...heard.rounds.flatMap(round => ['', ...seatLines(profile, round, heard.findings, say, width)]),
		...allFindingLines(heard, say, width),
		...(heard.blend ? ['', ...blendLines(profile, heard.blend, say, width)] : []),
		'',
		...wrap(
			heard.isTaken
				? 'Taken into the profile.'
				: 'Nothing was changed. With --take this goes into the profile.',
			width,
		),
	];
}

function playingLines(profile: Profile, rows: readonly PlayingRow[], say: Say, width: number): string[] {
	return tableLines(
		[
			{title: '#', importance: 9, align: 'right'},
			{title: 'seat', importance: 8},
			{title: 'state', importance: 7},
			{title: 'clock', importance: 2, align: 'right'},
			{title: 'peak', importance: 3, align: 'right'},
			{title: 'what is wrong', importance: 6, leastCells: 20},
		],
		rows.map(row => {
			const {playing} = row;
			const worst = [...playing.findings, ...row.findings].filter(({kind}) => kind !== 'note');
			return [
				String(row.index + 1),
				row.seat === undefined
					? 'spare'
					: row.isUsed
						? nameOf(profile, row.seat)
						: `${nameOf(profile, row.seat)}, spare`,
				changedText(profile, row),
				`${formatSigned(playing.clockPpm, 0)} ppm`,
				`${formatNumber(20 * Math.log10(Math.max(playing.peak, 1e-6)), 0)} dBFS`,
				worst.length === 0 ? 'nothing' : headOf(worst[0]!, say),
			];
		}),
		width,
	);
}

function seatLines(
	profile: Profile,
	{seat, base, apart}: SeatRound,
	findings: readonly HearingFinding[],
	say: Say,
	width: number,
): string[] {
	const {lines, findings: own} = base.playing;
	const mean = meanLevel(lines);
	return [
		`${nameOf(profile, seat)}${apart ? ', mains and subs told apart' : ''}`,
		...tableLines(
			[
				{title: 'line', importance: 9},
				{title: 'arrives', importance: 8, align: 'right'},
				{title: 'sign', importance: 7},
				{title: 'level', importance: 6, align: 'right'},
				{title: 'decay', importance: 4, align: 'right'},
				{title: 'noise below', importance: 2, align: 'right'},
				{title: 'verdict', importance: 5, leastCells: 16},
			],
			lines.map(line => {
				const about = [...findings, ...own].find(
					each => each.about.includes(line.channel) && each.kind !== 'note',
				);
				const decay = line.decays.find(({hertz}) => hertz === 500)?.t20Seconds;
				return [
					nameOf(profile, line.channel),
					line.delayMs === undefined || line.isSub ? '' : `${formatSigned(line.delayMs, 2)} ms`,
					line.polarity === undefined ? '' : line.polarity.sign > 0 ? '+' : '−',
					line.levelDb === undefined || line.isSub ? '' : `${formatSigned(line.levelDb - mean, 1)} dB`,
					decay === undefined ? '' : `${formatNumber(decay, 2)} s`,
					line.onset ? `${formatNumber(line.noiseBelowDb, 0)} dB` : '',
					about ? headOf(about, say) : line.onset ? 'taken' : 'silent',
				];
			}),
			width,
		),
	];
}

function meanLevel(lines: readonly HeardLine[]): number {
	const levels = lines.flatMap(({isSub, levelDb}) => (isSub || levelDb === undefined ? [] : [levelDb]));
	return levels.length === 0 ? 0 : levels.reduce((sum, value) => sum + value, 0) / levels.length;
}

function allFindingLines({rows, findings}: HeardText, say: Say, width: number): string[] {
	const all = [...findings, ...rows.flatMap(row => [...row.playing.findings, ...row.findings])];
	const said = [...new Set(all.map(each => sentenceOf(each, say)))];
	return said.length === 0 ? [] : ['', ...said.flatMap(each => wrap(each, width, '- '))];
}

function blendLines(profile: Profile, blend: ProfileBlend, say: Say, width: number): string[] {
	const fronts = blend.fronts.map(
		({channel, gainDb}) => `${nameOf(profile, channel)} ${formatSigned(gainDb, 1)} dB`,
	);
	if (blend.groups.every(({addedMs, isTurned}) => addedMs === 0 && !isTurned))
		return wrap(
			'Blend: as it stands; no delay or polarity of the subs gains 0.3 dB through the crossover.',
			width,
		);
	return [
		...wrap(
			`Blend: ${formatSigned(blend.gainDb, 1)} dB through the crossover expected (${fronts.join(', ')}). To enter, then to verify by one more playing:`,
			width,
		),
		...blend.groups.flatMap(({subs, box, at, from, to, entry, addedMs, isTurned}) => {
			const shown = (value: number) =>
				entry === 'distance' ? say.length(value) : `${formatNumber(value, 2)} ms`;
			const delay =
				addedMs === 0
					? `${entry} as it stands`
					: from === undefined || to === undefined
						? `delay ${formatSigned(addedMs, 2)} ms`
						: `${entry} ${shown(to)} instead of ${shown(from)}`;
			const where =
				box === 'processor' ? `output ${at} of the bass processor` : `${nameOf(profile, at)} in the receiver`;
			return wrap(
				`${listed(subs.map(id => nameOf(profile, id)))}, ${where}: ${delay}${isTurned ? ', inverted' : ''}`,
				width,
				'- ',
			);
		}),
	];
}
