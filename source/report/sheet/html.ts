import type {SheetContent} from './content.ts';
import {escapeMarkup} from './escape.ts';
import {planSvg, type SvgPlan} from './planSvg.ts';
import {sheetStyle} from './style.ts';
import {type SheetTable, sheetTables} from './tables.ts';

function htmlTable({caption, heads, rows}: SheetTable): string {
	const head = heads.map(text => `<th scope="col">${escapeMarkup(text)}</th>`);
	const body = rows.map(row => {
		const [first, ...rest] = row.map(escapeMarkup);
		return `<tr><th scope="row">${first}</th>${rest.map(text => `<td>${text}</td>`).join('')}</tr>`;
	});
	return `<table><caption>${escapeMarkup(caption)}</caption><thead><tr>${head.join('')}</tr></thead><tbody>${body.join('')}</tbody></table>`;
}

function list(texts: readonly string[], className: string): string {
	if (texts.length === 0) return '';
	return `<ul class="${className}">${texts.map(text => `<li>${escapeMarkup(text)}</li>`).join('')}</ul>`;
}

function cableList(cables: SheetContent['cables']): string {
	const items = cables.map(({label, from, to, length, conductor}) => {
		const details = [`${from} to ${to}`, length, conductor].filter(Boolean).join(', ');
		return `<li><b>${escapeMarkup(label)}</b> ${escapeMarkup(details)}</li>`;
	});
	return items.length === 0 ? '' : `<h2>Cables</h2><ul class="cables">${items.join('')}</ul>`;
}

/** Rows that one page holds in large and in middling letters, counted on A4 and Letter in print. */
const fewRows = 26;
const manyRows = 36;

/**
The page for the cabinet door as one HTML file: no script, nothing fetched, the floor plan drawn inline to scale;
made to print in black and white on one A4 or Letter page.

@param plan - The floor plan; absent where the tape has not told where things stand.
*/
export function sheetHtml(content: SheetContent, plan?: SvgPlan): string {
	const tables = sheetTables(content);
	const rowCount = tables.reduce((sum, {rows}) => sum + rows.length, 0);
	const density = rowCount > manyRows ? 'dense' : rowCount > fewRows ? 'close' : 'wide';
	const drawn = (...ids: Array<SheetTable['id']>) =>
		tables
			.filter(({id}) => ids.includes(id))
			.map(htmlTable)
			.join('');
	const dial = drawn('receiver', 'processor') || '<p>Nothing to dial in yet.</p>';
	// Many cables beside each other take half the height.
	const cables = density === 'dense' ? cableList(content.cables) : drawn('cables');
	const rest = drawn('places') + cables;
	return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeMarkup(`${content.title}, ${content.date}`)}</title>
<style>${sheetStyle}</style>
</head>
<body class="${density}">
<header><h1>${escapeMarkup(content.title)}</h1><p>${escapeMarkup(`${content.date}. ${content.origin}.`)}</p></header>
${list(content.warnings, 'warnings')}
<main class="${plan ? 'drawn' : 'plain'}">
<div>${dial}${list(content.afterDialling, 'after')}</div>
${plan ? `<figure>${planSvg(plan)}<figcaption>From above, to scale</figcaption></figure>` : ''}
</main>
${rest}
<footer>
<p>${content.conditions.map(escapeMarkup).join('. ')}.</p>
<p class="cautions">${content.cautions.map(escapeMarkup).join(' ')}</p>
</footer>
</body>
</html>
`;
}
