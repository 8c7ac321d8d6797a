import {expect, test} from 'vitest';
import {solutionRows} from '../../source/report/solutionRows.ts';
import type {ChannelSolution} from '../../source/study/calibration/result.ts';
import {exampleChannel, exampleSay, exampleSolution} from './exampleSolution.ts';

const options = {lengthUnit: 'm', say: exampleSay} as const;

test('solutionRows has no rows when nothing is there', () => {
	expect(solutionRows(exampleSolution({channels: [], outputs: []}), options)).toEqual([]);
});

test('solutionRows leaves what is not known empty', () => {
	const [row] = solutionRows(exampleSolution({channels: [{id: 'FL', remarks: []}]}), options);
	expect(row).toMatchObject({name: 'Front left', distance: '', timing: '', level: '', trim: '', remark: ''});
});

test('solutionRows shows values with the steps of the boxes', () => {
	const [left] = solutionRows(exampleSolution(), options);
	expect(left).toMatchObject({timing: '3.2 ms', level: '75.4', trim: '−0.5', plusMinus: '0.3', moved: false});
	expect(left!.distance).toMatch(/^2\.87\d? m$/);
});

test('solutionRows tells the former value when a reading moved it by a step', () => {
	const previous = exampleSolution({channels: [exampleChannel('FL', 2.87, 3.1, 75.4, 1.5)]});
	const [left, centre] = solutionRows(exampleSolution(), {...options, previous});
	expect(left).toMatchObject({remark: 'was +1.5, 3.1 ms', moved: true});
	expect(centre).toMatchObject({remark: '', moved: false});
});

test('solutionRows says nothing of a move when only the exact value moved', () => {
	const channel = exampleChannel('FL', 2.87, 3.2, 75.4, -0.5);
	const before: ChannelSolution = {...channel, trimDb: {exact: -0.7, stepped: -0.5, sigma: 0.3}};
	const rows = solutionRows(exampleSolution({channels: [channel]}), {
		...options,
		previous: exampleSolution({channels: [before]}),
	});
	expect(rows[0]).toMatchObject({remark: '', moved: false});
});

test('solutionRows gives the most serious remark, and notes never', () => {
	const remarks = [
		{kind: 'note', code: 'a', text: 'Two readings.'},
		{kind: 'advice', code: 'b', text: 'Take it once more.'},
		{kind: 'problem', code: 'c', text: 'The trim does not fit.'},
	] as const;
	const [row] = solutionRows(exampleSolution({channels: [{id: 'FL', remarks}]}), options);
	expect(row!.remark).toBe('The trim does not fit.');
	const [quiet] = solutionRows(exampleSolution({channels: [{id: 'FL', remarks: [remarks[0]]}]}), options);
	expect(quiet!.remark).toBe('');
});

test('solutionRows leaves out of a remark what the row or the list below shows: the name and all after a sentence', () => {
	const text = 'Front left: no level at Sofa yet. Read the meter at ear height.';
	const remarks = [{kind: 'advice', code: 'a', about: 'FL', text}] as const;
	const [row] = solutionRows(exampleSolution({channels: [{id: 'FL', remarks}]}), options);
	expect(row!.remark).toBe('no level at Sofa yet.');
});

test('solutionRows lists processor outputs after the channels, with their subs by name', () => {
	const rows = solutionRows(exampleSolution(), {...options, subNames: {sub1: 'Front corner'}});
	expect(rows.at(-1)).toMatchObject({
		id: 'output:out1',
		name: 'out1: Front corner',
		timing: '1.2 ms',
		trim: '−2.0',
		remark: 'inverted',
	});
});

test('solutionRows writes a distance to enter in the unit that the receiver shows', () => {
	const channel: ChannelSolution = {
		id: 'FL',
		timing: {kind: 'distance', exact: 2.89, stepped: 2.896, sigma: 0.01},
		remarks: [],
	};
	const [row] = solutionRows(exampleSolution({channels: [channel]}), {
		...options,
		formatEntry: metres => `${(metres / 0.3048).toFixed(1)} ft`,
	});
	expect(row!.timing).toBe('9.5 ft');
});
