import type {SheetContent} from './content.ts';
import type {SheetCurves} from './curveOf.ts';
import {curveMm, curveSvg} from './curveSvg.ts';
import {escapeMarkup} from './escape.ts';
import {hasRoomForCurve, type PageAmount, pageFit} from './pageFit.ts';
import {planShape, planSvg, type SvgPlan} from './planSvg.ts';
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
	return items.length === 0 ? '' : `<div><h2>Cables</h2><ul class="cables">${items.join('')}</ul></div>`;
}

/** Width of bold letters over that of plain ones in the widest of the usual faces. */
const boldShare = 1.2;

const longestWord = (text: string) => Math.max(...text.split(' ').map(word => word.length));

/** How much there is to print, as `pageFit` counts it. */
function amountOf(
	content: SheetContent,
	tables: readonly SheetTable[],
	plan: SvgPlan | undefined,
): PageAmount {
	const dial = tables.filter(({id}) => id === 'receiver' || id === 'processor');
	// A column is as wide as its longest cell or a word of its head, and a blank; names are bold.
	const cellsOf = ({heads, rows}: SheetTable) =>
		heads.reduce((sum, head, column) => {
			const longest = Math.max(longestWord(head), ...rows.map(row => row[column]!.length));
			return sum + 1 + longest * (column === 0 ? boldShare : 1);
		}, 0);
	return {
		dialRows: dial.reduce((sum, {rows}) => sum + rows.length + 1.8, 0),
		dialCells: Math.max(0, ...dial.map(cellsOf)),
		dialLines: content.afterDialling.length + content.planned.length,
		places: content.places.length,
		placesCells: Math.max(0, ...tables.filter(({id}) => id === 'places').map(cellsOf)),
		cables: content.cables.length,
		warnings: content.warnings.length,
		...(plan && {planShape: planShape(plan)}),
	};
}

function responseWords({response}: SheetContent): string {
	return response === '' ? '' : `<p>${escapeMarkup(`${response} There is no room here to draw it.`)}</p>\n`;
}

function curveFigure(curves: SheetCurves): string {
	const lines = curves.curves.length > 1 ? 'Dashes: before. Solid: after. ' : '';
	return `<figure class="curve">${curveSvg(curves)}<figcaption>${escapeMarkup(`${lines}${curves.text}`)}</figcaption></figure>`;
}

const figures = (value: number) => String(Number(value.toFixed(2)));

/**
The page for the cabinet door as one HTML file: no script, nothing fetched, the floor plan drawn inline to scale;
made to print in black and white on one A4 or Letter page and to fill it, what is typed into boxes the largest.

@param plan - The floor plan; absent where the tape has not told where things stand.
@param curves - The recorded response; drawn only where the page has room for it, else told in words.
*/
export function sheetHtml(content: SheetContent, plan?: SvgPlan, curves?: SheetCurves): string {
	const tables = sheetTables(content);
	const amount = amountOf(content, tables, plan);
	const withCurve = {...amount, curveMm};
	const isCurveDrawn = curves !== undefined && hasRoomForCurve(withCurve);
	// Words take two lines, as a warning does.
	const withWords = {...amount, warnings: amount.warnings + (content.response === '' ? 0 : 1)};
	const {dialPt, smallPt, planMm} = pageFit(isCurveDrawn ? withCurve : withWords);
	const drawn = (...ids: Array<SheetTable['id']>) =>
		tables
			.filter(({id}) => ids.includes(id))
			.map(htmlTable)
			.join('');
	const dial = drawn('receiver', 'processor') || '<p>Nothing to dial in yet.</p>';
	const places = drawn('places');
	const figure = plan ? `<figure>${planSvg(plan)}<figcaption>From above, to scale</figcaption></figure>` : '';
	const sizes = `:root { --dial: ${figures(dialPt)}pt; --small: ${figures(smallPt)}pt; --plan: ${figures(planMm)}mm }`;
	return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeMarkup(`${content.title}, ${content.date}`)}</title>
<style>${sizes}${sheetStyle}</style>
</head>
<body>
<header><h1>${escapeMarkup(content.title)}</h1><p>${escapeMarkup(`${content.date}. ${content.origin}.`)}</p></header>
${list(content.warnings, 'warnings')}
<main>
${dial}${list(content.afterDialling, 'after')}
</main>
${places || figure ? `<section class="${places && figure ? 'beside' : 'alone'}">${places ? `<div>${places}</div>` : ''}${figure}</section>` : ''}
${list(content.planned, 'after')}
${cableList(content.cables)}
${isCurveDrawn ? curveFigure(curves) : ''}
<footer>
${isCurveDrawn ? '' : responseWords(content)}<p>${content.conditions.map(escapeMarkup).join('. ')}.</p>
<p class="cautions">${content.cautions.map(escapeMarkup).join(' ')}</p>
</footer>
</body>
</html>
`;
}
