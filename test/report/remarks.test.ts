import {expect, test} from 'vitest';
import {finding} from '../../source/profile/finding.ts';
import {remarkLines} from '../../source/report/remarks.ts';
import {distinct} from '../../source/report/said/said.ts';
import {exampleSay as say} from './exampleSolution.ts';

const note = {kind: 'note', code: 'a', about: 'FL', text: 'It lies 0.3 dB off.'} as const;
const problem = {kind: 'problem', code: 'b', text: 'Nothing is measured.'} as const;

test('`remarkLines` gives nothing for no remarks', () => {
	expect(remarkLines([], 80, say)).toEqual([]);
});

test('`remarkLines` puts problems first, and a subject before a text that does not name it', () => {
	expect(remarkLines([note, problem], 80, say)).toEqual([
		'',
		'Problems',
		'  - Nothing is measured.',
		'',
		'Notes',
		'  - Front left: It lies 0.3 dB off.',
	]);
	const named = {...note, text: 'Front left: again.'};
	expect(remarkLines([named], 80, say).at(-1)).toBe('  - Front left: again.');
});

test('`distinct` keeps one of two that say the same of the same thing', () => {
	expect(distinct([note, problem, {...note}, {...note, about: 'FR'}])).toHaveLength(3);
});

test('`remarkLines` says once, with all names, what is said alike of several', () => {
	const again = (about: string, text: string) => ({kind: 'advice', code: 'a', about, text}) as const;
	const remarks = [
		again('FL', 'Front left: take it again.'),
		again('FC', 'FC: 3 dB too loud.'),
		again('FR', 'FR: take it again.'),
	];
	expect(remarkLines(remarks, 80, say).slice(2)).toEqual([
		'  - Front left and Front right: take it again.',
		'  - Front centre: 3 dB too loud.',
	]);
});

test('`remarkLines` folds no texts that name their subject within a sentence', () => {
	const within = [note, {...note, about: 'FR'}].map(each => ({...each, text: `Move ${each.about} nearer.`}));
	expect(remarkLines(within, 80, say).slice(2)).toEqual(['  - Move FL nearer.', '  - Move FR nearer.']);
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
