import {cellWidth, fitCells} from '../../../report/fitCells.ts';
import type {ScreenLine} from '../../parts/lines.tsx';
import type {DialItem} from './items.ts';

/**
All items, one line each, in a window around the current one; how many are left out is said.

@param current - Place of the current item; undefined where none is.
*/
export function dialInList(
	items: readonly DialItem[],
	current: number | undefined,
	columns: number,
	height: number,
): ScreenLine[] {
	const rows = items.length <= height ? items.length : Math.max(0, height - 1);
	const from = Math.max(0, Math.min((current ?? 0) - Math.floor(rows / 2), items.length - rows));
	const titleCells = Math.max(...items.map(({title}) => cellWidth(title)));
	const places = Math.max(0, ...items.map(({values}) => values.length));
	const widths = Array.from({length: places}, (_, place) =>
		Math.max(...items.map(({values}) => cellWidth(values[place]?.value ?? ''))),
	);
	const shown = items.slice(from, from + rows).map((item, index): ScreenLine => {
		const isCurrent = from + index === current;
		const mark = isCurrent ? '›' : ' ';
		const values = item.values.map(({value}, place) => fitCells(value, widths[place]!, 'right')).join('   ');
		const change = item.isChanged ? '' : '   as it stands';
		const text = `${mark} ${item.isDone ? '✓' : '·'} ${fitCells(item.title, titleCells)}   ${values}${change}`;
		return {
			text: fitCells(text, columns).trimEnd(),
			style: isCurrent ? 'strong' : item.isDone ? 'quiet' : undefined,
		};
	});
	const left = items.length - rows;
	if (left === 0 || height <= 0) return shown;
	const text = `  ${from} above, ${left - from} below`;
	return [...shown, {text: fitCells(text, columns).trimEnd(), style: 'quiet'}];
}
