import {ticks} from 'd3-array';
import {scaleLinear, scaleLog} from 'd3-scale';
import {formatNumber} from '../profile/units/decimalText.ts';
import {type BrailleCanvas, brailleCanvas, type DotPattern} from './braille.ts';
import type {ChartOptions, ChartSeries} from './chartData.ts';
import {chartText} from './chartText.ts';
import {cellWidth, fitCells} from './fitCells.ts';

// Series are told apart by a letter on the curve and by the line, never by colour.
const patterns: ReadonlyArray<{readonly dots?: DotPattern; readonly sample: string}> = [
	{sample: '⠤⠤⠤⠤'},
	{dots: [4, 3], sample: '⠤⠄⠠⠤'},
	{dots: [1, 2], sample: '⠄⠂⠄⠂'},
	{dots: [6, 2, 1, 2], sample: '⠤⠤⠤⠠'},
];
const letters = 'abcdefghijklmnopqrstuvwxyz';
const leastColumns = 24;
const leastRows = 6;
const gridPattern = [1, 5];

/**
A chart of levels over a logarithmic frequency axis.

@returns Lines of at most `columns` cells, at most `rows` of them: the drawing, its axis and what the letters mean. Where the room is too small the chart comes in words.
*/
export function drawChart(options: ChartOptions): string[] {
	const {series, columns, rows, fromHz, toHz, marks = []} = options;
	const legend = legendLines(series, columns);
	const plotRows = rows - legend.length - 1;
	const range = levelRange(options);
	if (!range || columns < leastColumns || plotRows < leastRows - 1)
		return chartText(options)
			.slice(0, Math.max(0, rows))
			.map(line => fitCells(line, columns).trimEnd());

	const levelTicks = ticks(range[0], range[1], Math.max(2, Math.floor(plotRows / 3)));
	const axisCells = Math.max(2, ...levelTicks.map(level => cellWidth(formatNumber(level, 0)))) + 1;
	const canvas = brailleCanvas(columns - axisCells, plotRows);
	const x = scaleLog([fromHz, toHz], [0, canvas.dotColumns - 1]);
	const y = scaleLinear(range, [canvas.dotRows - 1, 0]);

	for (const level of levelTicks) canvas.line(0, y(level), canvas.dotColumns - 1, y(level), gridPattern);
	canvas.line(0, 0, 0, canvas.dotRows - 1);
	canvas.line(0, canvas.dotRows - 1, canvas.dotColumns - 1, canvas.dotRows - 1);
	for (const {frequencyHz, label} of marks) {
		canvas.line(x(frequencyHz), 0, x(frequencyHz), canvas.dotRows - 1, [1, 2]);
		canvas.text(Math.max(1, Math.floor(x(frequencyHz) / 2) - Math.floor(cellWidth(label) / 2)), 0, label);
	}

	for (const [index, {points}] of series.entries()) {
		for (const run of finiteRuns(points))
			canvas.path(
				run.map(({frequencyHz, levelDb}) => [x(frequencyHz), y(levelDb)]),
				patternOf(index).dots,
			);
	}

	for (const [index, {points}] of series.entries())
		writeLetter(
			canvas,
			index,
			series.length,
			points.map(({frequencyHz, levelDb}) => [x(frequencyHz), y(levelDb)]),
		);

	const labels = new Map(levelTicks.map(level => [Math.round(y(level)) >> 2, formatNumber(level, 0)]));
	const unitRow = [0, 1].find(row => !labels.has(row));
	if (unitRow !== undefined) labels.set(unitRow, 'dB');
	const drawn = canvas
		.lines()
		.map((line, row) => `${fitCells(labels.get(row) ?? '', axisCells - 1, 'right')} ${line}`);
	return [...drawn, frequencyAxis(fromHz, toHz, x, columns, axisCells), ...legend];
}

function patternOf(index: number) {
	return patterns[index % patterns.length]!;
}

function levelRange({series, fromHz, toHz, fromDb, toDb}: ChartOptions): [number, number] | undefined {
	if (!(fromHz > 0 && toHz > fromHz)) return undefined;
	const levels = series
		.flatMap(({points}) => points)
		.filter(({frequencyHz}) => frequencyHz >= fromHz && frequencyHz <= toHz)
		.map(({levelDb}) => levelDb)
		.filter(Number.isFinite);
	const low = fromDb ?? Math.min(...levels);
	const high = toDb ?? Math.max(...levels);
	if (!Number.isFinite(low) || !Number.isFinite(high)) return undefined;
	// Whole steps of 5 dB, and never so narrow that a wobble of a tenth looks like a cliff.
	const [floor, ceiling] = [Math.floor(low / 5) * 5, Math.ceil(high / 5) * 5];
	return fromDb !== undefined && toDb !== undefined && toDb > fromDb
		? [fromDb, toDb]
		: [floor, Math.max(ceiling, floor + 10)];
}

function finiteRuns(points: ChartSeries['points']): Array<Array<ChartSeries['points'][number]>> {
	const runs: Array<Array<ChartSeries['points'][number]>> = [[]];
	for (const point of points) {
		if (Number.isFinite(point.levelDb) && point.frequencyHz > 0) runs.at(-1)!.push(point);
		else if (runs.at(-1)!.length > 0) runs.push([]);
	}

	return runs.filter(run => run.length > 0);
}

/** Puts the series' letter on its curve, where it hides the fewest dots of the others; each looks in its own share of the width. */
function writeLetter(
	canvas: BrailleCanvas,
	index: number,
	count: number,
	dots: ReadonlyArray<readonly [number, number]>,
) {
	const from = ((index + 0.2) / count) * canvas.dotColumns;
	const to = ((index + 0.8) / count) * canvas.dotColumns;
	const inside = dots.filter(([x, y]) => y >= 0 && y < canvas.dotRows && x >= 2 && x < canvas.dotColumns);
	const own = inside.filter(([x]) => x >= from && x <= to);
	const cells = (own.length > 0 ? own : inside).map(
		([x, y]) => [Math.floor(x / 2), Math.floor(y / 4)] as const,
	);
	const [best] = cells.toSorted((a, b) => canvas.weight(...a, 1) - canvas.weight(...b, 1));
	if (best) canvas.text(...best, letters[index % letters.length]!);
}

function legendLines(series: readonly ChartSeries[], columns: number): string[] {
	const entries = series.map(
		({name}, index) => `${letters[index % letters.length]} ${patternOf(index).sample} ${name}`,
	);
	const lines: string[] = [];
	for (const entry of entries) {
		const joined = lines.length > 0 ? `${lines.at(-1)}   ${entry}` : entry;
		if (lines.length > 0 && cellWidth(joined) <= columns) lines[lines.length - 1] = joined;
		else lines.push(fitCells(entry, Math.min(columns, cellWidth(entry))));
	}

	return lines;
}

function frequencyAxis(
	fromHz: number,
	toHz: number,
	x: (frequencyHz: number) => number,
	columns: number,
	axisCells: number,
): string {
	// The usual frequencies of a logarithmic axis: 1, 2 and 5 in every decade.
	const decades = ticks(Math.floor(Math.log10(fromHz)), Math.ceil(Math.log10(toHz)), 10).filter(
		Number.isInteger,
	);
	const frequencies = decades.flatMap(decade => [1, 2, 5].map(digit => digit * 10 ** decade));
	let line = fitCells('Hz', axisCells);
	for (const frequency of frequencies) {
		if (frequency < fromHz || frequency > toHz) continue;
		const label = frequency >= 1000 ? `${frequency / 1000}k` : String(frequency);
		const middle = axisCells + Math.floor(x(frequency) / 2) - Math.floor(label.length / 2);
		const start = Math.max(axisCells, Math.min(columns - label.length, middle));
		if (start <= cellWidth(line.trimEnd())) continue;
		line = fitCells(line.trimEnd(), start) + label;
	}

	return line;
}
