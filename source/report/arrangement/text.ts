import type {LengthUnit, Profile} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {ArrangementAnswer, ArrangementRow, RowName} from '../../study/arrangement/answer.ts';
import type {ArrangementFinding} from '../../study/arrangement/facts.ts';
import type {Comparison} from '../../study/arrangement/judged.ts';
import type {ThingMove} from '../../study/arrangement/moves.ts';
import type {RoomShape} from '../../study/room/shape.ts';
import {remarkLines} from '../remarks.ts';
import {db} from '../said/figures.ts';
import {sayIn} from '../said/say.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';
import {placeInTapeTerms} from './placeText.ts';

export type ArrangementTextOptions = {
	readonly question: ArrangementAnswer['question'];
	readonly width: number;
	readonly seats: number;
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

const wallWords = {'wall:left': 'left wall', 'wall:right': 'right wall', 'wall:back': 'back wall'} as const;

function nameText(name: RowName): string {
	if (name.kind === 'now') return 'as it stands';
	if (name.kind === 'asked') return name.words;
	if (name.kind === 'oneMore') return 'one more subwoofer';
	if (name.kind === 'wall') return `screen on the ${wallWords[name.wall]}`;
	const {lifted, rowShiftMetres: shift} = name;
	const seats = shift === 0 ? '' : `, seats ${shift > 0 ? 'back' : 'forward'}`;
	return lifted === 0 ? 'nothing lifted' : `${lifted} lifted${seats}`;
}

const adds = (against: Comparison | undefined): string => {
	if (!against) return '';
	if (against.certainty === 'none') return 'no difference';
	const gain = formatSigned(against.gainDb, 1);
	return against.certainty === 'sure' ? `${gain} dB, sure` : `${gain} dB, not sure`;
};

/** Arrangements as a table with their figures, what to carry, and what is said of them. */
export function arrangementText(
	profile: Profile,
	rows: readonly ArrangementRow[],
	options: ArrangementTextOptions,
): string {
	const {question, width, seats, findings} = options;
	const unit = profile.lengthUnit ?? 'm';
	return [
		...wrap(`${profile.name}, ${profile.date}: ${titles[question]}`, width),
		'',
		...tableLines(
			[
				{title: 'arrangement', importance: 6, leastCells: 16},
				{title: seats > 1 ? 'seats differ' : 'uneven by', align: 'right', importance: 5},
				{title: 'bad case', align: 'right', importance: 2},
				{title: 'deepest hole', align: 'right', importance: 4},
				{title: 'output', align: 'right', importance: 1},
				{title: 'adds', importance: 5},
			],
			rows.map(({name, arrangement, against}) => {
				const {judged} = arrangement;
				const {hole, outputDb} = judged.middle;
				return [
					nameText(name),
					db(judged.meanDb),
					db(judged.badDb),
					`${formatNumber(-hole.depthDb, 0)} dB ${formatNumber(hole.frequencyHertz, 0)} Hz`,
					db(outputDb),
					adds(against),
				];
			}),
			width,
		),
		...wrap(
			'20 to 120 Hz, mean of 20 rooms that this one might be (sizes 1.5 %, places 3 cm, waves 2 % off); bad case: the 18th of them.',
			width,
		),
		...moveLines(options, unit, profile),
		...settingLines(rows, profile, options),
		...remarkLines(findings, width, sayIn(profile, unit)),
	].join('\n');
}

function moveLines(
	{moves, shape, width}: ArrangementTextOptions,
	unit: LengthUnit,
	profile: Profile,
): string[] {
	if (moves.length === 0) return [];
	const say = sayIn(profile, unit);
	return [
		'',
		'To carry, in this order',
		...moves.flatMap(({id, from, to}, i) =>
			wrap(
				`${i + 1}. ${say.name(id)}: to ${placeInTapeTerms(to, shape, unit)} (now ${placeInTapeTerms(from, shape, unit)}).`,
				width,
			),
		),
		...wrap('Heavy things in two; unplug a subwoofer before it is moved.', width),
	];
}

function settingLines(
	rows: readonly ArrangementRow[],
	profile: Profile,
	{width}: ArrangementTextOptions,
): string[] {
	const last = rows.at(-1);
	const set = last?.arrangement.settings.some(
		({delayMs, gainDb, isInverted}) => delayMs !== 0 || gainDb !== 0 || isInverted,
	);
	if (!last || !set) return [];
	const names = (profile.subs ?? []).map(({name}) => name);
	const texts = last.arrangement.settings.map(
		({delayMs, gainDb, isInverted}, i) =>
			`${names[i] ?? `sub ${i + 1}`} ${formatSigned(delayMs, 1)} ms, ${formatSigned(gainDb, 1)} dB${isInverted ? ', inverted' : ''}`,
	);
	return [
		'',
		...wrap(
			`Counted with, in “${nameText(last.name)}”, beyond delays by distance: ${texts.join('; ')}. What to dial in is decided at the seat, not here.`,
			width,
		),
	];
}
