import type {Profile} from '../../../profile/types.ts';
import {cellWidth, fitCells} from '../../../report/fitCells.ts';
import {largeLines} from '../../../report/largeLines.ts';
import {wrap} from '../../../report/wrap.ts';
import type {ScreenLine} from '../../parts/lines.tsx';
import {boxPageLines} from './boxPageLines.ts';
import type {DialItem, DialValue} from './items.ts';
import {dialInList} from './listLines.ts';
import {type DialInState, dialInMode, itemIndex} from './press.ts';
import {type Situation, situationOf} from './situation.ts';
import {whyLines} from './why.ts';

export type DialInView = {
	readonly columns: number;
	readonly height: number;
	/** No figures three lines tall, as for a screen reader. */
	readonly isPlain?: boolean;
};

const margin = '  ';
/** Cells between two values that stand side by side. */
const gap = 4;

/** The stop for typing the settings in, line by line, within its width and height. */
export function dialInLines(profile: Profile, state: DialInState, view: DialInView): ScreenLine[] {
	return pageLines(profile, state, view)
		.slice(0, view.height)
		.map(line => clipped(line, view.columns));
}

function pageLines(profile: Profile, state: DialInState, view: DialInView): ScreenLine[] {
	const {columns, height} = view;
	const situation = situationOf(profile);
	const put = (text: string, style?: ScreenLine['style']) => paragraph(text, columns, style);
	if (situation.kind === 'nothing') {
		return [
			...put('Nothing to type in yet', 'strong'),
			...put('Distances give delays, levels give trims. Take a first reading at the stops Tape and Meter.'),
		];
	}

	const mode = dialInMode(situation, state);
	if (situation.kind === 'undecided' || mode === 'stale') {
		const words =
			situation.kind === 'stale' ? staleLines(situation, columns) : readyLines(situation, columns);
		const free = height - words.length - 1;
		return [...words, {text: ''}, ...dialInList(situation.items, undefined, columns, free)];
	}

	const {items} = situation;
	const head = situation.kind === 'stale' ? put('? Old values: newer readings give others.', 'doubt') : [];
	if (!state.isSingle)
		return [...head, ...boxPageLines(profile, items, state, {...view, height: height - head.length})];
	const at = itemIndex(items, state.tick);
	const item = items[at]!;
	const below = belowLines(item, items, at, columns);
	const row = {...item.values[0]!, title: item.title, itemId: item.id};
	const why = state.isWhyShown ? whyLines(profile, row, columns) : [];
	const above = [...head, headLine(item.title, items, columns), ...put(boxText(item), 'quiet')];
	const free = height - above.length - below.length - 2;
	return [
		...above,
		{text: ''},
		...valueLines(item.values, {...view, height: free}),
		{text: ''},
		...(why.length > 0 ? why : below),
	];
}

function readyLines(situation: Situation, columns: number): ScreenLine[] {
	if (situation.kind !== 'undecided') return [];
	const {items, untimed, untrimmed} = situation;
	const values = items.flatMap(item => item.values);
	const changed = values.filter(({isChanged}) => isChanged).length;
	const missing = (what: string, names: readonly string[]) =>
		names.length === 0 ? [] : paragraph(`? No ${what} yet: ${names.join(', ')}.`, columns, 'doubt');
	return [
		...paragraph('The settings are ready', columns, 'strong'),
		...paragraph(
			`${values.length} values to type in, ${changed} of them new or changed. Enter decides on this set and keeps it.`,
			columns,
		),
		...missing('timing', untimed),
		...missing('trim', untrimmed),
	];
}

function staleLines(situation: Extract<Situation, {kind: 'stale'}>, columns: number): ScreenLine[] {
	const differing = situation.differing.join(', ');
	return [
		...paragraph('These settings are out of date', columns, 'strong'),
		...paragraph(`What was entered since gives other values for ${differing}.`, columns, 'doubt'),
		...paragraph(
			'Enter takes the new values; ticks stay where nothing changes. o stays with the old ones.',
			columns,
		),
	];
}

function clipped({text, style, after}: ScreenLine, columns: number): ScreenLine {
	const free = columns - cellWidth(text);
	if (free < 0) return {text: fitCells(text, columns).trimEnd(), style};
	return {text, style, after: after && cellWidth(after) > free ? fitCells(after, free).trimEnd() : after};
}

function paragraph(text: string, columns: number, style?: ScreenLine['style']): ScreenLine[] {
	return wrap(text, columns, margin).map(line => ({text: line, style}));
}

function headLine(title: string, items: readonly DialItem[], columns: number): ScreenLine {
	const count = `${items.filter(({isDone}) => isDone).length} of ${items.length} done`;
	const cells = Math.max(1, columns - cellWidth(count) - 1);
	return {text: fitCells(margin + title, cells), style: 'strong', after: ` ${count}`};
}

function boxText({box, about, isChanged, values}: DialItem): string {
	const where = `Into the ${box}${about ? `, ${about}` : ''}.`;
	if (!isChanged) return `${where} It stands there already: only check it.`;
	const changed = values.filter(value => value.isChanged).map(({label}) => label.toLowerCase());
	return `${where} New: ${changed.join(', ')}.`;
}

function belowLines(item: DialItem, items: readonly DialItem[], at: number, columns: number): ScreenLine[] {
	const put = (text: string, style?: ScreenLine['style']) => paragraph(text, columns, style);
	const open = items.filter(({isDone}) => !isDone);
	const next = [...items.slice(at + 1), ...items.slice(0, at)].find(({isDone}) => !isDone);
	const state =
		open.length === 0
			? put(`✓ All ${items.length} are typed in. Enter goes on.`, 'good')
			: item.isDone
				? put('✓ Done.', 'good')
				: put('▸ Typed in? Enter ticks it off.');
	return [
		...(item.caution ? put(`▲ ${item.caution}`, 'doubt') : []),
		...state,
		...(next ? put(`Then: ${next.title}`, 'quiet') : []),
	];
}

/** Values in large figures side by side, else below each other, else one line each, as the room allows. */
function valueLines(values: readonly DialValue[], {columns, height, isPlain}: DialInView): ScreenLine[] {
	const free = columns - margin.length;
	const blocks = values.map(value => ({
		value,
		lines: largeLines(value.value, free) ?? ['', '', value.value],
	}));
	const widths = blocks.map(({value, lines}) =>
		Math.max(...[value.label, wasText(value), ...lines].map(cellWidth)),
	);
	const total = widths.reduce((sum, width) => sum + width + gap, -gap);
	if (!isPlain && total <= free && height >= 5) {
		const row = (textOf: (block: (typeof blocks)[number]) => string) =>
			margin +
			blocks
				.map((block, index) => fitCells(textOf(block), widths[index]! + gap))
				.join('')
				.trimEnd();
		return [
			{text: row(({value}) => value.label)},
			...[0, 1, 2].map((line): ScreenLine => ({text: row(({lines}) => lines[line]!), style: 'value'})),
			{text: row(({value}) => wasText(value)), style: 'quiet'},
		];
	}

	if (!isPlain && height >= 4 * blocks.length) {
		return blocks.flatMap(({value, lines}): ScreenLine[] => [
			{text: `${margin}${value.label}`, after: `  ${wasText(value)}`},
			...lines.map((line): ScreenLine => ({text: margin + line, style: 'value'})),
		]);
	}

	const labelCells = Math.max(...values.map(({label}) => cellWidth(label)));
	return values.map(value => ({
		text: `${margin}${fitCells(value.label, labelCells)}  ${value.value}`,
		style: 'value',
		after: `   ${wasText(value)}`,
	}));
}

function wasText({was, isChanged}: DialValue): string {
	if (was !== undefined) return `was ${was}`;
	return isChanged ? 'new' : 'as it stands';
}
