import {expect, test} from 'vitest';
import {finding} from '../../source/profile/finding.ts';
import {solutionRows} from '../../source/report/solutionRows.ts';
import type {SolutionFinding} from '../../source/study/calibration/facts.ts';
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

test('solutionRows gives the head of the most serious finding, and notes never', () => {
	const remarks: SolutionFinding[] = [
		finding('note', 'level-decides-nothing', ['FL']),
		finding('advice', 'level-take-again', ['FL'], {chance: 0.4}),
		finding('doubt', 'subs-beyond-coherent', ['FL'], {excessDb: 3}),
	];
	const [row] = solutionRows(exampleSolution({channels: [{id: 'FL', remarks}]}), options);
	// Neither the name, which the row shows, nor what to do, which the list below says.
	expect(row!.remark).toBe('together they read 3.0 dB more than they could make in phase');
	const [quiet] = solutionRows(exampleSolution({channels: [{id: 'FL', remarks: [remarks[0]!]}]}), options);
	expect(quiet!.remark).toBe('');
});

test('solutionRows lists processor outputs after the channels, with their subs by name', () => {
	const rows = solutionRows(exampleSolution(), {...options, subNames: {sub1: 'Front corner'}});
	expect(rows.at(-1)).toMatchObject({
		id: 'output:out1',
		name: 'out1: Front corner',
		timing: '1.2 ms',
		trim: '−2.0',
		remark: 'inverted',
		polarity: 'inverted',
	});
	const apart = solutionRows(exampleSolution(), {...options, isPolarityApart: true});
	expect(apart.at(-1)).toMatchObject({remark: '', polarity: 'inverted'});
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
