import {markdownText} from '../markdownText.ts';
import type {SheetContent} from './content.ts';
import {type SheetTable, sheetTables} from './tables.ts';

const line = (cells: readonly string[]) => `| ${cells.map(markdownText).join(' | ')} |`;
const bullets = (texts: readonly string[]) => texts.map(text => `- ${markdownText(text)}`).join('\n');

function section({caption, heads, rows}: SheetTable): string {
	const under = `| ${heads.map(() => '---').join(' | ')} |`;
	return [`## ${markdownText(caption)}`, '', line(heads), under, ...rows.map(line)].join('\n');
}

/** The page for the cabinet door as Markdown. */
export function sheetMarkdown(content: SheetContent): string {
	const tables = sheetTables(content);
	const dial = tables.filter(({id}) => id === 'receiver' || id === 'processor');
	const parts = [
		`# ${markdownText(content.title)}`,
		markdownText(`${content.date}. ${content.origin}.`),
		content.warnings.map(text => `- **${markdownText(text)}**`).join('\n'),
		...(dial.length > 0 ? dial.map(section) : ['Nothing to dial in yet.']),
		bullets(content.afterDialling),
		...tables.filter(table => !dial.includes(table)).map(section),
		content.response === '' ? '' : `## Recorded\n\n${markdownText(content.response)}`,
		content.planned.length > 0 ? `## Planned\n\n${bullets(content.planned)}` : '',
		`## Conditions\n\n${bullets(content.conditions)}`,
		`## Cautions\n\n${bullets(content.cautions)}`,
	];
	return `${parts.filter(Boolean).join('\n\n')}\n`;
}
