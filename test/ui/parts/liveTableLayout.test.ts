import {expect, test} from 'vitest';
import {solutionRows} from '../../../source/report/solutionRows.ts';
import {columnGap, layoutLiveTable, markCells} from '../../../source/ui/parts/liveTableLayout.ts';
import {exampleSay, exampleSolution} from '../../report/exampleSolution.ts';

const rows = solutionRows(exampleSolution(), {lengthUnit: 'm', say: exampleSay});
const fields = (columns: number) =>
	layoutLiveTable(rows, 'delay', columns, 40).columns.map(({field}) => field);

test('layoutLiveTable shows no row when there is no room for one', () => {
	const {from, to} = layoutLiveTable(rows, 'delay', 80, 2);
	expect(to - from).toBe(0);
});

test('layoutLiveTable keeps name, timing and trim to the last', () => {
	expect(fields(30)).toEqual(['name', 'timing', 'trim']);
	expect(fields(80)).toEqual(['name', 'distance', 'timing', 'level', 'trim', 'plusMinus', 'remark']);
});

test('layoutLiveTable leaves out columns of which nothing is known', () => {
	const bare = rows.map(row => ({...row, level: '', plusMinus: ''}));
	const layout = layoutLiveTable(bare, 'delay', 160, 40);
	expect(layout.columns.map(({field}) => field)).not.toContain('level');
	expect(layout.hidden).toBe('');
});

test('layoutLiveTable never asks for more cells than there are', () => {
	for (let columns = 30; columns <= 200; columns++) {
		const layout = layoutLiveTable(rows, 'delay', columns, 40);
		const used = layout.columns.reduce((sum, {cells}) => sum + cells, 0);
		expect(used + columnGap * (layout.columns.length - 1) + markCells).toBeLessThanOrEqual(columns);
	}
});

test('layoutLiveTable keeps the current row in the window', () => {
	for (const [index, {id}] of rows.entries()) {
		const {from, to} = layoutLiveTable(rows, 'delay', 80, 5, id);
		expect(to - from).toBe(3);
		expect(index).toBeGreaterThanOrEqual(from);
		expect(index).toBeLessThan(to);
	}
});
