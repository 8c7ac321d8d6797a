import {cellWidth, fitCells} from './fitCells.ts';
import {wrap} from './wrap.ts';

export type TableColumn = {
	readonly title: string;
	readonly align?: 'left' | 'right';
	/** Where the width is short, the least important column goes first. The most important one always stays. */
	readonly importance: number;
	/** Least width to which the column may be narrowed, its cells then wrapped, before any column is left out; kept whole where not given. */
	readonly leastCells?: number;
};

const gap = 2;

/**
A table as lines of text, no wider than asked for.

Columns without any value are left out silently. Where the rest is too wide, columns that may be narrowed are, and what
is longer goes on in the next line; then the least important ones are left out, and a last line says which.

@param columns - Shape (n).
@param rows - Shape (m, n); one line of text a cell.
@param width - Cells at hand, whole number ≥ 1.
@returns Header, rows, and where something is missing, a line that says so.
*/
export function tableLines(
	columns: readonly TableColumn[],
	rows: ReadonlyArray<readonly string[]>,
	width: number,
): string[] {
	const all = columns
		.map((column, index) => {
			const cells = rows.map(row => row[index] ?? '');
			const natural = Math.max(...[column.title, ...cells].map(cell => cellWidth(cell)));
			return {column, cells, natural, least: Math.min(column.leastCells ?? natural, natural)};
		})
		.filter(({cells}) => cells.some(cell => cell !== ''));
	if (all.length === 0) return [];

	const kept = [...all];
	const fits = () => total(kept.map(({least}) => least)) <= width;
	while (kept.length > 1 && !fits()) {
		const least = kept.reduce((a, b) => (b.column.importance < a.column.importance ? b : a));
		kept.splice(kept.indexOf(least), 1);
	}

	const widths = shareOut(kept, width);
	const lines = (cellOf: (column: (typeof kept)[number]) => string): string[] => {
		const wrapped = kept.map((each, index) => inLines(cellOf(each), widths[index]!));
		const height = Math.max(...wrapped.map(({length}) => length));
		return Array.from({length: height}, (_, at) =>
			kept
				.map(({column}, index) => fitCells(wrapped[index]![at] ?? '', widths[index]!, column.align ?? 'left'))
				.join(' '.repeat(gap))
				.trimEnd(),
		);
	};
	const dropped = all.filter(each => !kept.includes(each)).map(({column}) => column.title);
	return [
		...lines(({column}) => column.title),
		...rows.flatMap((_, row) => lines(({cells}) => cells[row]!)),
		...(dropped.length > 0 ? [`Not shown in ${width} columns: ${dropped.join(', ')}.`] : []),
	];
}

/** A cell in as many lines as its column's width asks for; most take one. */
function inLines(text: string, width: number): string[] {
	return cellWidth(text) <= width ? [text] : wrap(text, width);
}

function total(widths: readonly number[]): number {
	return widths.reduce((sum, width) => sum + width, 0) + gap * (widths.length - 1);
}

/** Natural widths where they fit; else the columns that may be narrowed give way, the widest first. */
function shareOut(kept: ReadonlyArray<{natural: number; least: number}>, width: number): number[] {
	const widths = kept.map(({natural}) => natural);
	for (let excess = total(widths) - width; excess > 0; ) {
		const open = widths.flatMap((cells, index) => (cells > kept[index]!.least ? [index] : []));
		const widest = open.length > 0 ? open.reduce((a, b) => (widths[b]! > widths[a]! ? b : a)) : 0;
		const cut = open.length > 0 ? Math.min(excess, widths[widest]! - kept[widest]!.least) : excess;
		widths[widest] = Math.max(1, widths[widest]! - cut);
		excess -= cut;
	}

	return widths;
}
