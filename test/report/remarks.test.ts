import {expect, test} from 'vitest';
import {finding} from '../../source/profile/finding.ts';
import {remarkLines} from '../../source/report/remarks.ts';
import {distinct, type Sayable} from '../../source/report/said/said.ts';
import {exampleSay as say} from './exampleSolution.ts';

const note = (about: string[]): Sayable => finding('note', 'level-decides-nothing', about);
const problem: Sayable = finding('problem', 'nothing-measured', []);

test('`remarkLines` gives nothing for no remarks', () => {
	expect(remarkLines([], 80, say)).toEqual([]);
});

test('`remarkLines` puts problems first, and a subject before what is said of it', () => {
	expect(remarkLines([note(['FL']), problem], 200, say)).toEqual([
		'',
		'Problems',
		expect.stringMatching(/^ {2}- Nothing /),
		'',
		'Notes',
		'  - Front left: no further reading of the level needed.',
	]);
});

test('`distinct` keeps one of two that say the same of the same thing', () => {
	expect(distinct([note(['FL']), problem, note(['FL']), note(['FR'])])).toHaveLength(3);
});

test('`remarkLines` says once, with all names, what is said alike of several, and apart what is not', () => {
	const missing = (about: string, isSub: boolean): Sayable =>
		finding('advice', 'distance-missing', [about], {seat: 'sofa', isSub});
	const lines = remarkLines([missing('FL', false), missing('sub1', true), missing('FR', false)], 200, say);
	expect(lines.slice(2)).toEqual([
		expect.stringMatching(/^ {2}- Front left and Front right: no distance /),
		expect.stringMatching(/^ {2}- (?!Front).*: no distance /),
	]);
});

test('`remarkLines` names each thing once where one finding is about several', () => {
	const weighted = (about: string[]) =>
		finding('note', 'weighting-corrected', about, {
			weighting: 'C',
			offDb: -1.46,
			signal: {kind: 'pink', fromHertz: 28.2, toHertz: 112.2},
		});
	const [line] = remarkLines([weighted(['FL']), weighted(['FR']), weighted(['FL', 'FR'])], 200, say).slice(2);
	expect(line).toMatch(/^ {2}- Front left and Front right: C weighting/);
});
