import {channelNames} from '../profile/channels.ts';
import type {LengthUnit} from '../profile/types.ts';
import {formatNumber} from '../profile/units/decimalText.ts';
import {formatLength} from '../profile/units/length.ts';
import type {
	ChannelSolution,
	Dialled,
	OutputSolution,
	Remark,
	Solution,
} from '../study/calibration/result.ts';
import {formatDelay, formatTrim} from './settingText.ts';

/** One line of the settings table, every value as text with what a person needs to read it; empty where unknown. */
export type SolutionRow = {
	/** Channel, or `output:` and the processor output's id. */
	readonly id: string;
	readonly name: string;
	/** Measured distance, in the display unit. */
	readonly distance: string;
	/** Delay, or the distance to enter. */
	readonly timing: string;
	/** Level at the target seat, dB. */
	readonly level: string;
	readonly trim: string;
	/** Standard uncertainty of the trim, dB. */
	readonly plusMinus: string;
	readonly crossover: string;
	/** Inverted polarity; then what a new reading moved by a step, else what the most serious remark begins with. */
	readonly remark: string;
	/** Whether a stepped value differs from the previous solution. */
	readonly moved: boolean;
};

export type SolutionRowOptions = {
	readonly lengthUnit: LengthUnit;
	/** The solution before the latest reading; values that moved by a step since are told in words. */
	readonly previous?: Solution;
	/** Names of subs by id; the id where missing. */
	readonly subNames?: Readonly<Record<string, string>>;
	/** How a distance to enter is written in the receiver's own unit; the display unit where not given. */
	readonly formatEntry?: (metres: number) => string;
};

type Stepped = {readonly timing?: Dialled & {readonly kind?: string}; readonly trimDb?: Dialled};

const seriousness: Readonly<Record<Remark['kind'], number>> = {problem: 3, doubt: 2, advice: 1, note: 0};

/** The settings table of a solution: channels first, then outputs of the bass processor. */
export function solutionRows(solution: Solution, options: SolutionRowOptions): SolutionRow[] {
	return [
		...solution.channels.map(channel => channelRow(channel, options)),
		...solution.outputs.map(output => outputRow(output, solution, options)),
	];
}

function channelRow(channel: ChannelSolution, options: SolutionRowOptions): SolutionRow {
	const {id, distance, timing, level, trimDb, crossoverHertz, polarityInverted} = channel;
	const before = options.previous?.channels.find(other => other.id === id);
	const moved = movedText(channel, before, options);
	return {
		id,
		name: channelNames[id],
		distance: distance ? formatLength(distance.metres, options.lengthUnit) : '',
		timing: timing ? timingText(timing, options) : '',
		level: level ? formatNumber(level.decibels, 1) : '',
		trim: trimDb ? formatTrim(trimDb.stepped) : '',
		plusMinus: trimDb ? formatNumber(trimDb.sigma, 1) : '',
		crossover:
			crossoverHertz === undefined ? '' : crossoverHertz === 'full' ? 'full range' : `${crossoverHertz} Hz`,
		remark: remarkText(polarityInverted, moved, channel.remarks, [channelNames[id], id]),
		moved: moved !== '',
	};
}

function outputRow(output: OutputSolution, solution: Solution, options: SolutionRowOptions): SolutionRow {
	const before = options.previous?.outputs.find(other => other.id === output.id);
	const moved = movedText(asStepped(output), before && asStepped(before), options);
	const fed = solution.subs.filter(sub => output.subs.includes(sub.id));
	const only = fed.length === 1 ? fed[0] : undefined;
	const names = output.subs.map(id => options.subNames?.[id] ?? id).join(', ');
	return {
		id: `output:${output.id}`,
		name: names ? `${output.id}: ${names}` : output.id,
		distance: only?.distance ? formatLength(only.distance.metres, options.lengthUnit) : '',
		timing: output.delayMs ? formatDelay(output.delayMs.stepped) : '',
		level: only?.level ? formatNumber(only.level.decibels, 1) : '',
		trim: output.gainDb ? formatTrim(output.gainDb.stepped) : '',
		plusMinus: output.gainDb ? formatNumber(output.gainDb.sigma, 1) : '',
		crossover: '',
		remark: remarkText(output.polarityInverted, moved, output.remarks, []),
		moved: moved !== '',
	};
}

function asStepped({delayMs, gainDb}: OutputSolution): Stepped {
	return {timing: delayMs && {...delayMs, kind: 'delay'}, trimDb: gainDb};
}

function timingText(timing: Dialled & {readonly kind?: string}, options: SolutionRowOptions): string {
	if (timing.kind !== 'distance') return formatDelay(timing.stepped);
	return options.formatEntry?.(timing.stepped) ?? formatLength(timing.stepped, options.lengthUnit);
}

function movedText(now: Stepped, before: Stepped | undefined, options: SolutionRowOptions): string {
	const parts: string[] = [];
	if (before?.trimDb && now.trimDb && differs(now.trimDb, before.trimDb)) {
		parts.push(formatTrim(before.trimDb.stepped));
	}

	if (before?.timing && now.timing && differs(now.timing, before.timing)) {
		parts.push(timingText(before.timing, options));
	}

	return parts.length > 0 ? `was ${parts.join(', ')}` : '';
}

function differs(now: Dialled, before: Dialled): boolean {
	return Math.abs(now.stepped - before.stepped) > 1e-6;
}

function remarkText(
	isInverted: boolean | undefined,
	moved: string,
	remarks: readonly Remark[],
	names: readonly string[],
): string {
	return [isInverted ? 'inverted' : '', moved || mostSerious(remarks, names)].filter(Boolean).join('; ');
}

/** First sentence of the most serious remark, without the name that the row shows anyway. */
function mostSerious(remarks: readonly Remark[], names: readonly string[]): string {
	const worthSaying = remarks.filter(({kind}) => kind !== 'note');
	const [first] = worthSaying.toSorted((a, b) => seriousness[b.kind] - seriousness[a.kind]);
	const text = first?.text ?? '';
	const before = names.find(name => text.startsWith(`${name}: `));
	const said = before === undefined ? text : text.slice(before.length + 2);
	return /^.*?[.?](?= \p{Lu})/u.exec(said)?.[0] ?? said;
}
