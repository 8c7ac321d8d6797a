import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';
import type {SheetContent} from './content.ts';
import {type SheetTable, sheetTables} from './tables.ts';

/** How much a column matters where the width is short: the name stays, then what is typed or taped. */
const importance = [10, 6, 9, 8, 7] as const;
/** Cells to which names and long heads may be narrowed before a column is left out. */
const leastCells = [14, undefined, 8] as const;

function tableText({caption, heads, rows}: SheetTable, width: number): string[] {
	const columns = heads.map((title, column) => {
		const least = leastCells[column];
		return {
			title,
			importance: importance[column] ?? 1,
			...(least !== undefined && {leastCells: least}),
		};
	});
	return ['', caption.toUpperCase(), ...tableLines(columns, rows, width)];
}

/** The page for the cabinet door as plain text, no line wider than asked for. */
export function sheetText(content: SheetContent, width: number): string {
	const tables = sheetTables(content);
	const dial = tables.filter(({id}) => id === 'receiver' || id === 'processor');
	const lines = [
		content.title,
		...wrap(`${content.date}. ${content.origin}.`, width),
		...content.warnings.flatMap(text => wrap(text, width, '! ')),
		...(dial.length > 0 ? dial.flatMap(table => tableText(table, width)) : ['', 'Nothing to dial in yet.']),
		...(content.afterDialling.length > 0
			? ['', ...content.afterDialling.flatMap(text => wrap(text, width))]
			: []),
		...tables.filter(table => !dial.includes(table)).flatMap(table => tableText(table, width)),
		...(content.response === '' ? [] : ['', 'RECORDED', ...wrap(content.response, width)]),
		...(content.planned.length > 0
			? ['', 'PLANNED', ...content.planned.flatMap(text => wrap(text, width, '- '))]
			: []),
		'',
		'CONDITIONS',
		...content.conditions.flatMap(text => wrap(text, width)),
		'',
		'CAUTIONS',
		...content.cautions.flatMap(text => wrap(text, width, '- ')),
	];
	return `${lines.join('\n')}\n`;
}
