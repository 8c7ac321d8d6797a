import type {SheetContent} from './content.ts';
import {type SheetTable, sheetTables} from './tables.ts';

/** Text in a table cell: a bar would end the cell, a line break the table. */
const cell = (text: string) => text.replaceAll('\\', '\\\\').replaceAll('|', '\\|').replace(/\s+/g, ' ');
const line = (cells: readonly string[]) => `| ${cells.map(cell).join(' | ')} |`;
const bullets = (texts: readonly string[]) => texts.map(text => `- ${text}`).join('\n');

function section({caption, heads, rows}: SheetTable): string {
	return [`## ${caption}`, '', line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}

/** The page for the cabinet door as Markdown. */
export function sheetMarkdown(content: SheetContent): string {
	const tables = sheetTables(content);
	const dial = tables.filter(({id}) => id === 'receiver' || id === 'processor');
	const parts = [
		`# ${content.title}`,
		`${content.date}. ${content.origin}.`,
		bullets(content.warnings.map(text => `**${text}**`)),
		...(dial.length > 0 ? dial.map(section) : ['Nothing to dial in yet.']),
		bullets(content.afterDialling),
		...tables.filter(table => !dial.includes(table)).map(section),
		`## Conditions\n\n${bullets(content.conditions)}`,
		`## Cautions\n\n${bullets(content.cautions)}`,
	];
	return `${parts.filter(Boolean).join('\n\n')}\n`;
}
