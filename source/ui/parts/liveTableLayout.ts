import {cellWidth} from '../../report/fitCells.ts';
import type {SolutionRow} from '../../report/solutionRows.ts';

type Field = Exclude<keyof SolutionRow, 'id' | 'moved'>;

export type LiveColumn = {
	readonly field: Field;
	readonly title: string;
	readonly cells: number;
	readonly align: 'left' | 'right';
};

export type LiveTableLayout = {
	readonly columns: readonly LiveColumn[];
	/** First row shown and the row after the last. */
	readonly from: number;
	readonly to: number;
	/** What had to be left out, for the reader; empty where nothing is. */
	readonly hidden: string;
};

type Wish = {readonly field: Field; readonly title: string; readonly least?: number};

/** Blanks between two columns. */
export const columnGap = 2;
/** Cells before the first column, for the mark of the current row. */
export const markCells = 2;

const remarkLeast = 14;
const remarkMost = 60;
// What a person at the seat can do without first, when the terminal is narrow.
const dropOrder: readonly Field[] = ['crossover', 'plusMinus', 'level', 'distance', 'remark'];

/**
Which columns and rows of the settings table fit.

@param rows - All rows; the window follows the row with `currentId`, else it starts at the top.
@param columns - Cells available, whole number.
@param height - Lines available, with the heading and the line that tells what is hidden.
*/
export function layoutLiveTable(
	rows: readonly SolutionRow[],
	timingTitle: string,
	columns: number,
	height: number,
	currentId?: string,
): LiveTableLayout {
	const {shown, dropped} = fitColumns(rows, timingTitle, columns);
	const full = rows.length + 1 <= height && dropped.length === 0;
	const room = Math.max(0, height - (full ? 1 : 2));
	const [from, to] = windowAround(rows, room, currentId);
	const hidden = [
		from > 0 ? `${from} above` : '',
		to < rows.length ? `${rows.length - to} below` : '',
		dropped.length > 0 ? `no room for ${dropped.join(', ')}` : '',
	].filter(Boolean);
	return {columns: shown, from, to, hidden: hidden.length > 0 ? `Hidden: ${hidden.join('; ')}` : ''};
}

function wishes(rows: readonly SolutionRow[], timingTitle: string): Wish[] {
	const all: Wish[] = [
		{field: 'name', title: 'channel', least: 8},
		{field: 'distance', title: 'distance'},
		{field: 'timing', title: timingTitle},
		{field: 'level', title: 'level'},
		{field: 'trim', title: 'trim'},
		{field: 'plusMinus', title: '± trim'},
		{field: 'crossover', title: 'crossover'},
		{field: 'remark', title: 'remark', least: remarkLeast},
	];
	const always: readonly Field[] = ['name', 'timing', 'trim', 'remark'];
	return all.filter(({field}) => always.includes(field) || rows.some(row => row[field] !== ''));
}

function fitColumns(rows: readonly SolutionRow[], timingTitle: string, columns: number) {
	let wanted = wishes(rows, timingTitle);
	const dropped: string[] = [];
	const natural = ({field, title}: Wish) =>
		Math.max(cellWidth(title), ...rows.map(row => cellWidth(row[field])));
	const needed = () =>
		wanted.reduce((sum, wish) => sum + (wish.field === 'remark' ? remarkLeast : natural(wish)), 0) +
		columnGap * (wanted.length - 1) +
		markCells;
	for (const field of dropOrder) {
		if (needed() <= columns) break;
		const [gone] = wanted.filter(wish => wish.field === field);
		if (!gone) continue;
		wanted = wanted.filter(wish => wish !== gone);
		dropped.push(gone.title);
	}

	// Even the shortest table may be wider than the terminal: the name gives way.
	const excess = Math.max(0, needed() - columns);
	const spare = Math.max(0, columns - needed());
	const shown = wanted.map((wish): LiveColumn => {
		const {field, title} = wish;
		if (field === 'remark') {
			const cells = Math.min(remarkLeast + spare, Math.max(remarkLeast, Math.min(natural(wish), remarkMost)));
			return {field, title, cells, align: 'left'};
		}

		if (field === 'name') return {field, title, cells: Math.max(1, natural(wish) - excess), align: 'left'};
		return {field, title, cells: natural(wish), align: 'right'};
	});
	return {shown, dropped};
}

function windowAround(rows: readonly SolutionRow[], room: number, currentId?: string): [number, number] {
	if (rows.length <= room) return [0, rows.length];
	const current = Math.max(
		0,
		rows.findIndex(({id}) => id === currentId),
	);
	const from = Math.min(Math.max(0, current - Math.floor(room / 2)), rows.length - room);
	return [from, from + room];
}
