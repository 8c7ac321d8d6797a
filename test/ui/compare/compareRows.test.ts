import {expect, test} from 'vitest';
import {solutionRows} from '../../../source/report/solutionRows.ts';
import {compareRows, type Side} from '../../../source/ui/compare/compareRows.ts';
import {exampleChannel, exampleSay, exampleSolution} from '../../report/exampleSolution.ts';

const side = (solution = exampleSolution()): Side => ({
	solution,
	rows: solutionRows(solution, {lengthUnit: 'm', say: exampleSay}),
});

test('compareRows of a profile with itself shows every value once, without weight', () => {
	const rows = compareRows(side(), side());
	expect(rows).toHaveLength(9);
	for (const row of rows) expect(row).toMatchObject({weight: 0, trim: expect.not.stringContaining('→')});
});

test('compareRows puts the larger change first and shows both values', () => {
	const channels = exampleSolution().channels.map(channel => {
		if (channel.id === 'FC') return exampleChannel('FC', 2.71, 3.7, 73.9, 3);
		if (channel.id === 'LS') return exampleChannel('LS', 1.95, 5.9, 74.2, 0.5);
		return channel;
	});
	const rows = compareRows(side(), side(exampleSolution({channels})));
	expect(rows[0]).toMatchObject({name: 'Front centre', trim: '+1.0 → +3.0', distance: '2.71 m'});
	expect(rows[1]).toMatchObject({name: 'Left surround', timing: '6.0 ms → 5.9 ms', trim: '+0.5'});
	expect(rows.slice(2).every(({weight}) => weight === 0)).toBe(true);
});

test('compareRows puts what only one side has before everything else', () => {
	const fewer = exampleSolution({channels: exampleSolution().channels.slice(1)});
	expect(compareRows(side(), side(fewer))[0]).toMatchObject({name: 'Front left', trim: '−0.5 → –'});
	expect(compareRows(side(fewer), side())[0]).toMatchObject({name: 'Front left', trim: '– → −0.5'});
});

test('compareRows counts a value that one side does not know as a change', () => {
	const channels = exampleSolution().channels.map(channel =>
		channel.id === 'FR' ? {...channel, level: undefined} : channel,
	);
	expect(compareRows(side(), side(exampleSolution({channels})))[0]).toMatchObject({
		name: 'Front right',
		level: '75.1 → –',
	});
});
