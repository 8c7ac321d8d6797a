import {expect, test} from 'vitest';
import {distinctRemarks} from '../../source/report/allRemarks.ts';
import {remarkLines} from '../../source/report/remarks.ts';

const note = {kind: 'note', code: 'a', about: 'FL', text: 'It lies 0.3 dB off.'} as const;
const problem = {kind: 'problem', code: 'b', text: 'Nothing is measured.'} as const;

test('`remarkLines` gives nothing for no remarks', () => {
	expect(remarkLines([], 80)).toEqual([]);
});

test('`remarkLines` puts problems first, and a subject before a text that does not name it', () => {
	const names = (id: string) => (id === 'FL' ? 'Front left' : id);
	expect(remarkLines([note, problem], 80, names)).toEqual([
		'',
		'Problems',
		'  - Nothing is measured.',
		'',
		'Notes',
		'  - Front left: It lies 0.3 dB off.',
	]);
	const named = {...note, text: 'Front left: again.'};
	expect(remarkLines([named], 80, names).at(-1)).toBe('  - Front left: again.');
});

test('`distinctRemarks` keeps one of two that say the same of the same thing', () => {
	expect(distinctRemarks([note, problem, {...note}, {...note, about: 'FR'}])).toHaveLength(3);
});
