import fc from 'fast-check';
import {expect, test} from 'vitest';
import {cellWidth} from '../../source/report/fitCells.ts';
import {tableLines} from '../../source/report/table.ts';

const columns = [
	{title: 'channel', importance: 3},
	{title: 'trim', importance: 2, align: 'right'},
	{title: 'remark', importance: 1, leastCells: 8},
] as const;

test('`tableLines` gives nothing when there is nothing to show', () => {
	expect(tableLines([], [], 80)).toEqual([]);
	expect(tableLines(columns, [], 80)).toEqual([]);
	expect(tableLines(columns, [['', '', '']], 80)).toEqual([]);
});

test('`tableLines` aligns its columns and leaves out an empty one without a word', () => {
	const rows = [
		['Front left', '−0.5', ''],
		['Top side right', '+10.0', ''],
	];
	expect(tableLines(columns, rows, 80)).toEqual([
		'channel          trim',
		'Front left       −0.5',
		'Top side right  +10.0',
	]);
});

test('`tableLines` goes on in the next line of a column that may be narrowed before it leaves one out', () => {
	const rows = [['Front left', '−0.5', 'Take it once more']];
	expect(tableLines(columns, rows, 28)).toEqual([
		'channel     trim  remark',
		'Front left  −0.5  Take it',
		'                  once more',
	]);
});

test('`tableLines` leaves out the least important column and says which', () => {
	const rows = [['Front left', '−0.5', 'Take it once more']];
	expect(tableLines(columns, rows, 20)).toEqual([
		'channel     trim',
		'Front left  −0.5',
		'Not shown in 20 columns: remark.',
	]);
});

test('`tableLines` keeps the most important column in however little width', () => {
	const lines = tableLines(columns, [['Front left', '−0.5', 'x']], 6);
	expect(lines.slice(0, 3)).toEqual(['channe', 'l', 'Front']);
});

test('`tableLines` counts wide characters as two cells', () => {
	const rows = [
		['前左', '1'],
		['FL', '2'],
	];
	expect(tableLines(columns, rows, 80).map(line => cellWidth(line))).toEqual([13, 13, 13]);
});

test('`tableLines` is never wider than asked for, but for the line that names what is missing', () => {
	const cell = fc.stringMatching(/^[ -~]{0,20}$/);
	fc.assert(
		fc.property(
			fc.array(fc.tuple(cell, cell, cell), {maxLength: 5}),
			fc.integer({min: 1, max: 60}),
			(rows, width) => {
				const lines = tableLines(columns, rows, width).filter(line => !line.startsWith('Not shown'));
				for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(width);
			},
		),
		{seed: 7},
	);
});
