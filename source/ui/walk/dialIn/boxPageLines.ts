import type {Profile} from '../../../profile/types.ts';
import {cellWidth, fitCells} from '../../../report/fitCells.ts';
import {largeLines} from '../../../report/largeLines.ts';
import {wrap} from '../../../report/wrap.ts';
import type {ScreenLine} from '../../parts/lines.tsx';
import type {DialItem} from './items.ts';
import {type BoxRow, type DialPage, dialPages, placeInPages} from './pages.ts';
import type {DialInState} from './press.ts';
import {strikingLines, whyLines} from './why.ts';

type View = {readonly columns: number; readonly height: number; readonly isPlain?: boolean};

/** Fewer lines than this leave no room for figures three lines tall. */
const tallHeight = 14;

/** A page as the box itself shows it: the value under the cursor large, then all rows; what stands already is quiet. */
export function boxPageLines(
	profile: Profile,
	items: readonly DialItem[],
	{tick, isWhyShown}: DialInState,
	{columns, height, isPlain}: View,
): ScreenLine[] {
	const pages = dialPages(profile, items);
	const place = placeInPages(pages, tick);
	const page = pages[place.page]!;
	const row = page.rows[place.row]!;
	const head = pageHead(pages, place.page, columns);
	const isTall = !isPlain && height >= tallHeight;
	const large = isTall ? largeOf(row, columns) : [];
	const below = isWhyShown
		? whyLines(profile, row, columns)
		: [...strikingLines(profile, row, columns), ...belowOf(pages, page, row, columns)];
	const free = height - 1 - large.length - below.length - 1;
	return [head, ...large, ...rowLines(page, place.row, columns, free), {text: ''}, ...below];
}

function pageHead(pages: readonly DialPage[], at: number, columns: number): ScreenLine {
	const {title, box} = pages[at]!;
	const rows = pages.flatMap(page => page.rows);
	const after = `   ${rows.filter(({isDone}) => isDone).length} of ${rows.length} typed in`;
	const text = `  ${title}, into the ${box}: page ${at + 1} of ${pages.length}`;
	return {text: fitCells(text, Math.max(1, columns - cellWidth(after))), style: 'strong', after};
}

function largeOf({value, title, was, isChanged}: BoxRow, columns: number): ScreenLine[] {
	const before = was === undefined ? (isChanged ? 'new' : 'as it stands') : `was ${was}`;
	const lines = largeLines(value, Math.max(1, columns - 30));
	if (!lines)
		return [{text: ''}, {text: `  ${value}`, style: 'value', after: `   ${title}, ${before}`}, {text: ''}];
	return [
		{text: ''},
		...lines.map(
			(text, index): ScreenLine => ({
				text: `  ${text}`,
				style: 'value',
				after: index === 1 ? `   ${title}` : index === 2 ? `   ${before}` : undefined,
			}),
		),
		{text: ''},
	];
}

/** The rows in a window around the cursor; how many are left out is said. */
function rowLines({rows}: DialPage, at: number, columns: number, height: number): ScreenLine[] {
	const room = rows.length <= height ? rows.length : Math.max(0, height - 1);
	const from = Math.max(0, Math.min(at - Math.floor(room / 2), rows.length - room));
	const titles = Math.max(...rows.map(({title}) => cellWidth(title)));
	const values = Math.max(...rows.map(({value}) => cellWidth(value)));
	const shown = rows.slice(from, from + room).map((row, index): ScreenLine => {
		const isCurrent = from + index === at;
		const state = row.was === undefined ? (row.isChanged ? 'new' : 'as it stands') : `was ${row.was}`;
		const text = `${isCurrent ? '›' : ' '} ${row.isDone ? '✓' : '·'} ${fitCells(row.title, titles)}   ${fitCells(row.value, values, 'right')}`;
		return {
			text: fitCells(text, columns).trimEnd(),
			style: isCurrent ? 'strong' : row.isChanged && !row.isDone ? undefined : 'quiet',
			after: cellWidth(text) + cellWidth(state) + 3 <= columns ? `   ${state}` : undefined,
		};
	});
	const left = rows.length - room;
	if (left === 0 || height <= 0) return shown;
	return [...shown, {text: `  ${from} above, ${left - from} below`, style: 'quiet'}];
}

function belowOf(
	pages: readonly DialPage[],
	page: DialPage,
	{caution}: BoxRow,
	columns: number,
): ScreenLine[] {
	const put = (text: string, style?: ScreenLine['style']) =>
		wrap(text, columns, '  ').map((line): ScreenLine => ({text: line, style}));
	const open = pages.filter(({rows}) => rows.some(({isDone}) => !isDone));
	if (open.length === 0) return put('✓ All pages are typed in. Enter goes on.', 'good');
	const next = open.find(other => other !== page);
	const isDone = page.rows.every(row => row.isDone);
	return [
		...(caution ? put(`▲ ${caution}`, 'doubt') : []),
		...(isDone
			? put('✓ This page is done. Enter goes to the next.', 'good')
			: put('▸ Typed in? Enter ticks the page, Space a row.')),
		...(next ? put(`Then: ${next.title}`, 'quiet') : []),
	];
}
