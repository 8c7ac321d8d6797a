import {channelNames} from '../profile/channels.ts';
import {mostSeriousFirst} from '../profile/finding.ts';
import type {LengthUnit} from '../profile/types.ts';
import {formatNumber} from '../profile/units/decimalText.ts';
import {formatLength} from '../profile/units/length.ts';
import type {ChannelSolution, Dialled, OutputSolution, Solution} from '../study/calibration/result.ts';
import {headOf, type Sayable} from './said/said.ts';
import type {Say} from './said/say.ts';
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
	/** `inverted`, or empty. */
	readonly polarity: string;
	/** Inverted polarity, where it has no column of its own; then what a new reading moved by a step, else what the most serious remark begins with. */
	readonly remark: string;
	/** Whether a stepped value differs from the previous solution. */
	readonly moved: boolean;
};

export type SolutionRowOptions = {
	readonly lengthUnit: LengthUnit;
	readonly say: Say;
	/** Polarity has a column of its own, and is left out of the remark. */
	readonly isPolarityApart?: boolean;
	/** The solution before the latest reading; values that moved by a step since are told in words. */
	readonly previous?: Solution;
	/** Names of subs by id; the id where missing. */
	readonly subNames?: Readonly<Record<string, string>>;
	/** How a distance to enter is written in the receiver's own unit; the display unit where not given. */
	readonly formatEntry?: (metres: number) => string;
};

type Stepped = {readonly timing?: Dialled & {readonly kind?: string}; readonly trimDb?: Dialled};

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
		polarity: polarityInverted ? 'inverted' : '',
		remark: remarkText(polarityInverted, moved, channel.remarks, options),
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
		polarity: output.polarityInverted ? 'inverted' : '',
		remark: remarkText(output.polarityInverted, moved, output.remarks, options),
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

/** Inverted polarity; then what moved, else the head of the most serious finding. */
function remarkText(
	isInverted: boolean | undefined,
	moved: string,
	remarks: readonly Sayable[],
	{say, isPolarityApart}: SolutionRowOptions,
): string {
	const [first] = mostSeriousFirst(remarks.filter(({kind}) => kind !== 'note'));
	return [isInverted && !isPolarityApart ? 'inverted' : '', moved || (first ? headOf(first, say) : '')]
		.filter(Boolean)
		.join('; ');
}
