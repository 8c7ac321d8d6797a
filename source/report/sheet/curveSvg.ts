import {ticks} from 'd3-array';
import {scaleLinear, scaleLog} from 'd3-scale';
import {formatNumber} from '../../profile/units/decimalText.ts';
import type {SheetCurves} from './curveOf.ts';
import {escapeMarkup} from './escape.ts';

/** Tenths of a millimetre: as wide as the page. */
const width = 1880;
const height = 240;
const left = 130;
const right = 20;
const top = 10;
const bottom = 50;
const letterHeight = 30;
const fromHertz = 20;
/** Solid is what stands now; dashes are what was before. */
const dashes = (index: number, count: number) => (index < count - 1 ? ' stroke-dasharray="14 9"' : '');

const rounded = (value: number) => Number(value.toFixed(1));

/** Height of the drawing with its caption of two lines, millimetres. */
export const curveMm = height / 10 + 8;

/** Recorded curves over frequency as inline SVG, with their words as its alternative; black and white. */
export function curveSvg({text, curves}: SheetCurves): string {
	const toHertz = Math.max(fromHertz * 10, ...curves.map(({curve}) => curve.frequenciesHz.at(-1) ?? 0));
	const levels = curves.flatMap(({curve}) =>
		[...curve.levelsDb].filter((_, index) => curve.frequenciesHz[index]! >= fromHertz),
	);
	const low = Math.floor(Math.min(-5, ...levels) / 5) * 5;
	const high = Math.ceil(Math.max(5, ...levels) / 5) * 5;
	const x = scaleLog([fromHertz, toHertz], [left, width - right]);
	const y = scaleLinear([low, high], [height - bottom, top]);
	const rules = ticks(low, high, 4).map(
		level =>
			`<path d="M${left} ${rounded(y(level))}H${width - right}" stroke="#999" stroke-width="1.5"/><text x="${left - 10}" y="${rounded(y(level) + 10)}" text-anchor="end">${formatNumber(level, 0)} dB</text>`,
	);
	// The usual frequencies of a logarithmic axis: 1, 2 and 5 in every decade.
	const frequencies = [1, 2, 3, 4]
		.flatMap(decade => [1, 2, 5].map(digit => digit * 10 ** decade))
		.filter(hertz => hertz >= fromHertz && hertz <= toHertz);
	const marks = frequencies.map(
		hertz =>
			`<path d="M${rounded(x(hertz))} ${top}V${height - bottom}" stroke="#999" stroke-width="1.5"/><text x="${rounded(x(hertz))}" y="${height - bottom + 34}" text-anchor="middle">${hertz >= 1000 ? `${hertz / 1000}k` : hertz}</text>`,
	);
	const paths = curves.map(({curve}, index) => {
		const points = [...curve.frequenciesHz].flatMap((hertz, at) =>
			hertz < fromHertz ? [] : [`${rounded(x(hertz))} ${rounded(y(curve.levelsDb[at]!))}`],
		);
		return points.length === 0
			? ''
			: `<path d="M${points.join('L')}" fill="none" stroke="#000" stroke-width="4"${dashes(index, curves.length)}/>`;
	});
	return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escapeMarkup(text)}" font-family="Arial, sans-serif" font-size="${letterHeight}">
${rules.join('\n')}
${marks.join('\n')}
${paths.join('\n')}
<text x="${width - right}" y="${height - bottom + 34}" text-anchor="end">Hz</text>
</svg>`;
}
