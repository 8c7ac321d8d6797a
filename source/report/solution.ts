import type {LengthUnit, Profile} from '../profile/types.ts';
import {formatNumber, formatSigned} from '../profile/units/decimalText.ts';
import {formatLength} from '../profile/units/length.ts';
import type {Dialled, Solution} from '../study/calibration/result.ts';
import {solutionRemarks} from './allRemarks.ts';
import {formatEntry} from './entryText.ts';
import {masterSentence} from './masterSentence.ts';
import {referenceSeatText} from './referenceSeatText.ts';
import {remarkLines, sentenceCount} from './remarks.ts';
import {crossoverReasonSentences} from './said/crossover.ts';
import {sayIn} from './said/say.ts';
import {type SolutionRow, solutionRows} from './solutionRows.ts';
import {type TableColumn, tableLines} from './table.ts';
import {wrap} from './wrap.ts';

export type SolutionTextOptions = {
	readonly lengthUnit: LengthUnit;
	/** Cells at hand. */
	readonly width: number;
	/** Also the values as computed, before they were brought to the steps of the boxes. */
	readonly showsExact?: boolean;
	/** Also the notes that say how each value came about. */
	readonly showsWhy?: boolean;
};

/** The settings of a profile as text: tables for receiver and processor, the master volume, every remark. */
export function solutionText(profile: Profile, solution: Solution, options: SolutionTextOptions): string {
	const {width, lengthUnit} = options;
	const timing = profile.receiver?.timing;
	const rows = solutionRows(solution, {
		lengthUnit,
		say: sayIn(profile, lengthUnit),
		isPolarityApart: true,
		subNames: Object.fromEntries((profile.subs ?? []).map(({id, name}) => [id, name])),
		...(timing?.kind === 'distance' && {formatEntry: (metres: number) => formatEntry(metres, timing)}),
	});
	const seat = profile.seats.find(({id}) => id === solution.seat);
	const {metresPerSecond, formula} = solution.speedOfSound;
	const isDistance = solution.channels.some(channel => channel.timing?.kind === 'distance');
	return [
		...wrap(`${profile.name}, ${profile.date}`, width),
		...wrap(
			`${referenceSeatText(seat?.name ?? solution.seat)}. Speed of sound ${formatNumber(metresPerSecond, 1)} m/s (${formula}).`,
			width,
		),
		'',
		...settingsTable('channel', isDistance ? 'enter' : 'delay', rows, solution, options),
		...outputsTable(rows, solution, options),
		...subsTable(profile, solution, options),
		...closingLines(solution, width),
		...remarkPart(profile, solution, options),
	].join('\n');
}

function remarkPart(
	profile: Profile,
	solution: Solution,
	{width, lengthUnit, showsWhy = false}: SolutionTextOptions,
): string[] {
	const say = sayIn(profile, lengthUnit);
	const all = solutionRemarks(solution).filter(({code}) => !(code in crossoverReasonSentences));
	const shown = showsWhy ? all : all.filter(({kind}) => kind !== 'note');
	const hidden = sentenceCount(
		all.filter(each => !shown.includes(each)),
		say,
	);
	return [
		...remarkLines(shown, width, say),
		...(showsWhy && solution.channels.some(({crossoverHertz}) => crossoverHertz !== undefined)
			? wrap('blend --crossover tells why each crossover was chosen.', width, '  - ')
			: []),
		...(hidden > 0
			? ['', ...wrap(`${hidden} more notes say how each value came about: --why shows them.`, width)]
			: []),
	];
}

function settingsTable(
	first: string,
	timingTitle: string,
	rows: readonly SolutionRow[],
	solution: Solution,
	{width, showsExact = false, lengthUnit}: SolutionTextOptions,
): string[] {
	const columns: TableColumn[] = [
		{title: first, importance: 10, leastCells: 12},
		{title: 'distance', align: 'right', importance: 5},
		{title: timingTitle, align: 'right', importance: 9},
		{title: 'exact', align: 'right', importance: 8},
		{title: '±', align: 'right', importance: 3},
		{title: 'level', align: 'right', importance: 4},
		{title: 'trim', align: 'right', importance: 9},
		{title: 'exact', align: 'right', importance: 8},
		{title: '± dB', align: 'right', importance: 2},
		{title: 'crossover', align: 'right', importance: 7},
		{title: 'polarity', importance: 8},
		{title: 'remark', importance: 1, leastCells: 12},
	];
	const cells = rows
		.filter(row => row.id.startsWith('output:') === (first !== 'channel'))
		.map(row => {
			const channel = solution.channels.find(({id}) => id === row.id);
			const output = solution.outputs.find(({id}) => `output:${id}` === row.id);
			const timing = channel?.timing ?? output?.delayMs;
			const trim = channel?.trimDb ?? output?.gainDb;
			const isDistance = channel?.timing?.kind === 'distance';
			return [
				row.name,
				row.distance,
				row.timing,
				showsExact && timing ? exactTiming(timing, isDistance) : '',
				timing ? sigmaText(timing, isDistance, lengthUnit) : '',
				row.level,
				row.trim,
				showsExact && trim ? formatSigned(trim.exact, 3) : '',
				row.plusMinus,
				row.crossover,
				row.polarity,
				row.remark,
			];
		});
	return tableLines(columns, cells, width);
}

/** Uncertainties are shown finer than lengths, or most would read as nothing. */
const sigmaStepMetres = 0.001;

function exactTiming({exact}: Dialled, isDistance: boolean): string {
	return isDistance ? `${formatNumber(exact, 4)} m` : `${formatNumber(exact, 4)} ms`;
}

function sigmaText({sigma}: Dialled, isDistance: boolean, lengthUnit: LengthUnit): string {
	return isDistance
		? formatLength(sigma, lengthUnit, {stepMetres: sigmaStepMetres})
		: `${formatNumber(Math.max(sigma, 0.01), 2)} ms`;
}

function outputsTable(
	rows: readonly SolutionRow[],
	solution: Solution,
	options: SolutionTextOptions,
): string[] {
	if (solution.outputs.length === 0) return [];
	return ['', 'Bass processor', ...settingsTable('output', 'delay', rows, solution, options)];
}

function subsTable(profile: Profile, solution: Solution, {width, lengthUnit}: SolutionTextOptions): string[] {
	if (solution.subs.length === 0) return [];
	const columns: TableColumn[] = [
		{title: 'sub', importance: 10, leastCells: 10},
		{title: 'fed by', importance: 2},
		{title: 'output', importance: 3},
		{title: 'distance', align: 'right', importance: 6},
		{title: 'arrival', align: 'right', importance: 7},
		{title: 'level', align: 'right', importance: 8},
	];
	const cells = solution.subs.map(({id, fedBy, output, distance, arrivalMs, level}) => [
		profile.subs?.find(sub => sub.id === id)?.name ?? id,
		fedBy,
		output ?? '',
		distance ? formatLength(distance.metres, lengthUnit) : '',
		arrivalMs ? `${formatNumber(arrivalMs.value, 2)} ms` : '',
		level ? `${formatNumber(level.decibels, 1)} dB` : '',
	]);
	return ['', 'Subs as measured', ...tableLines(columns, cells, width)];
}

function closingLines(solution: Solution, width: number): string[] {
	const {worstTimingErrorMs: timing, worstLevelErrorDb: level} = solution;
	const sentences = [masterSentence(solution) ?? []].flat();
	const left = [
		...(timing === undefined ? [] : [`${formatNumber(timing, 2)} ms`]),
		...(level === undefined ? [] : [`${formatNumber(level, 2)} dB`]),
	];
	if (left.length > 0)
		sentences.push(`Rounding leaves at most ${left.join(' and ')} between any two channels.`);
	return sentences.length > 0 ? ['', ...sentences.flatMap(sentence => wrap(sentence, width))] : [];
}
