import type {LengthUnit, Profile} from '../../profile/types.ts';
import {formatSigned} from '../../profile/units/decimalText.ts';
import type {ArrangementAnswer} from '../../study/arrangement/answer.ts';
import type {ArrangementFinding} from '../../study/arrangement/facts.ts';
import type {PlanMeasures} from '../../study/arrangement/measures.ts';
import type {ThingMove} from '../../study/arrangement/moves.ts';
import type {ArrangementRow, RowContents} from '../../study/arrangement/row.ts';
import type {RoomShape} from '../../study/room/shape.ts';
import {remarkLines} from '../remarks.ts';
import {db} from '../said/figures.ts';
import {sayIn} from '../said/say.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';
import {addsSentence, ladderCells, ladderTitles} from './ladderCells.ts';
import {moveLines} from './moveLines.ts';
import {ladderRowName} from './rowName.ts';

export type ArrangementTextOptions = {
	readonly question: ArrangementAnswer['question'];
	readonly width: number;
	readonly seats: number;
	/** What each row is about, and what it measures beside its bass. */
	readonly contents: readonly RowContents[];
	readonly measures: readonly PlanMeasures[];
	/** The row that is chosen, where one is. */
	readonly chosen: number | undefined;
	readonly shape: RoomShape;
	/** What to carry for the row that was chosen or advised; empty where nothing is. */
	readonly moves: readonly ThingMove[];
	readonly findings: readonly ArrangementFinding[];
};

const titles: Readonly<Record<ArrangementAnswer['question'], string>> = {
	now: 'the bass as everything stands',
	whatIf: 'what if',
	spots: 'which spot',
	search: 'the best by what has to be lifted',
};

/** Arrangements as a table with their figures, what to carry, and what is said of them. */
export function arrangementText(
	profile: Profile,
	rows: readonly ArrangementRow[],
	options: ArrangementTextOptions,
): string {
	const {question, width, seats, contents, measures, findings} = options;
	const unit = profile.lengthUnit ?? 'm';
	const names = contents.map(one => ladderRowName(one, sayIn(profile, unit), unit));
	const [difference, hole, off, view, cable, adds] = ladderTitles(seats);
	return [
		...wrap(`${profile.name}, ${profile.date}: ${titles[question]}`, width),
		'',
		...tableLines(
			[
				{title: 'arrangement', importance: 8, leastCells: 16},
				{title: difference, align: 'right', importance: 6},
				{title: 'bad case', align: 'right', importance: 5.5},
				{title: hole, align: 'right', importance: 5},
				{title: 'output', align: 'right', importance: 1},
				{title: off, align: 'right', importance: 4},
				{title: view, align: 'right', importance: 3},
				{title: cable, align: 'right', importance: 2.5},
				{title: adds, importance: 7},
			],
			rows.map((row, i) => {
				const {badDb, middle} = row.arrangement.judged;
				const [uneven, deepest, ...rest] = ladderCells(row, measures[i]!, unit);
				return [names[i]!, uneven!, db(badDb), deepest!, db(middle.outputDb), ...rest];
			}),
			width,
		),
		...wrap(
			'20 to 120 Hz, mean of 20 rooms that this one might be (sizes 1.5 %, places 3 cm, waves 2 % off); bad case: the 18th of them.',
			width,
		),
		...chosenLines(rows, names, options),
		...carryLines(options, unit, profile),
		...settingLines(rows, names, profile, options),
		...remarkLines(findings, width, sayIn(profile, unit)),
	].join('\n');
}

/** What the ladder says of the rows that the one above does as well. */
function chosenLines(
	rows: readonly ArrangementRow[],
	names: readonly string[],
	{question, width}: ArrangementTextOptions,
): string[] {
	if (question !== 'search') return [];
	return rows.flatMap((row, i) =>
		row.againstAbove ? wrap(`${names[i]!}: ${addsSentence(row)}`, width) : [],
	);
}

function carryLines(
	{moves, shape, width}: ArrangementTextOptions,
	unit: LengthUnit,
	profile: Profile,
): string[] {
	if (moves.length === 0) return [];
	const say = sayIn(profile, unit);
	return [
		'',
		'To carry, in this order',
		...moveLines(moves, shape, {name: say.name, unit}, width),
		...wrap('Heavy things in two; unplug a subwoofer before it is moved.', width),
	];
}

function settingLines(
	rows: readonly ArrangementRow[],
	names: readonly string[],
	profile: Profile,
	{width, question, chosen}: ArrangementTextOptions,
): string[] {
	const index = question === 'search' ? (chosen ?? 0) : rows.length - 1;
	const last = rows[index];
	const set = last?.arrangement.settings.some(
		({delayMs, gainDb, isInverted}) => delayMs !== 0 || gainDb !== 0 || isInverted,
	);
	if (!last || !set) return [];
	const subs = (profile.subs ?? []).map(({name}) => name);
	const texts = last.arrangement.settings.map(
		({delayMs, gainDb, isInverted}, i) =>
			`${subs[i] ?? `sub ${i + 1}`} ${formatSigned(delayMs, 1)} ms, ${formatSigned(gainDb, 1)} dB${isInverted ? ', inverted' : ''}`,
	);
	return [
		'',
		...wrap(
			`Counted with, in “${names[index]!}”, beyond delays by distance: ${texts.join('; ')}. What to dial in is decided at the seat, not here.`,
			width,
		),
	];
}
