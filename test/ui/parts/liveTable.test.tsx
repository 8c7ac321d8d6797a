import {renderToString} from 'ink';
import {render} from 'ink-testing-library';
import stringWidth from 'string-width';
import {describe, expect, test, vi} from 'vitest';
import {solutionRows} from '../../../source/report/solutionRows.ts';
import {LiveTable, spokenRow} from '../../../source/ui/parts/liveTable.tsx';
import {exampleChannel, exampleSay, exampleSolution} from '../../report/exampleSolution.ts';
import {readAloud} from '../screenReader.ts';

const rows = solutionRows(exampleSolution(), {lengthUnit: 'm', say: exampleSay});
const draw = (columns: number, height: number, currentId?: string, shown = rows) =>
	renderToString(<LiveTable rows={shown} columns={columns} height={height} currentId={currentId} />, {
		columns,
	});

test('LiveTable says what is to come when there are no rows', () => {
	expect(draw(80, 10, undefined, [])).toContain('No settings yet');
});

describe.each([30, 40, 60, 80, 120, 160])('at %i columns', columns => {
	test.each([2, 5, 8, 12, 40])('LiveTable stays inside a height of %i', height => {
		const lines = draw(columns, height, 'TpSiL').split('\n');
		expect(lines.length).toBeLessThanOrEqual(height);
		for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(columns);
	});

	test('LiveTable shows name and trim of the current channel when only a few lines fit', () => {
		const line = draw(columns, 4, 'TpSiR')
			.split('\n')
			.find(text => text.startsWith('›'));
		expect(line).toMatch(/^› Top s.*\+1\.5/);
	});
});

test('LiveTable tells how many rows it hides on either side', () => {
	expect(draw(80, 5, 'LS')).toContain('Hidden: 2 above; 4 below');
	expect(draw(80, 12)).not.toContain('Hidden');
});

test('LiveTable names the columns that a narrow terminal hides', () => {
	expect(draw(48, 20)).toMatch(/Hidden: no room for .*± trim/);
});

test('LiveTable keeps columns in line when names are wide', () => {
	const wide = rows.map((row, index) => (index === 1 ? {...row, name: '前方中央'} : row));
	const lines = draw(80, 20, undefined, wide).split('\n').slice(1, 4);
	const positions = lines.map(line => stringWidth(line.slice(0, line.indexOf(' m '))));
	expect(new Set(positions).size).toBe(1);
});

test('LiveTable marks a moved value by a word', async () => {
	const previous = exampleSolution({channels: [exampleChannel('FC', 2.71, 3.7, 73.9, 1.5)]});
	const view = render(<LiveTable rows={rows} columns={80} height={20} />);
	expect(view.lastFrame()).not.toContain('was');
	view.rerender(
		<LiveTable
			rows={solutionRows(exampleSolution(), {lengthUnit: 'm', say: exampleSay, previous})}
			columns={80}
			height={20}
		/>,
	);
	await vi.waitFor(() => expect(view.lastFrame()).toMatch(/Front centre.*was \+1\.5/));
	view.unmount();
});

test('LiveTable follows a new width', async () => {
	const view = render(<LiveTable rows={rows} columns={90} height={20} />);
	expect(view.lastFrame()).toContain('level');
	view.rerender(<LiveTable rows={rows} columns={40} height={20} />);
	await vi.waitFor(() => {
		for (const line of view.lastFrame()!.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(40);
	});
	view.unmount();
});

test('spokenRow reads a row as words, without empty values', () => {
	const columns = [
		{field: 'name', title: 'channel', cells: 10, align: 'left'},
		{field: 'timing', title: 'delay', cells: 7, align: 'right'},
		{field: 'trim', title: 'trim', cells: 5, align: 'right'},
		{field: 'remark', title: 'remark', cells: 20, align: 'left'},
	] as const;
	expect(spokenRow(rows[0]!, columns)).toBe('Front left: delay 3.2 ms, trim −0.5');
	expect(spokenRow({...rows[0]!, timing: '', trim: ''}, columns)).toBe('Front left: nothing yet');
});

test('LiveTable is read aloud row by row, without frame or blanks', () => {
	const words = readAloud(<LiveTable rows={rows} columns={80} height={20} />, 120);
	expect(words).toContain('Front left: distance 2.87 m, delay 3.2 ms, level 75.4, trim −0.5, ± trim 0.3');
	expect(words).not.toMatch(/ {3}/);
});
