import {expect, test} from 'vitest';
import type {Flag} from '../../source/commands/command.ts';
import {commandIndex, flagProblems, flagText} from '../../source/commands/flags.ts';

const known: Record<string, Flag> = {
	rate: {type: 'number', help: 'Rate'},
	as: {type: 'string', help: 'Form', choices: ['text', 'html']},
	out: {type: 'string', help: 'Where to', value: 'FILE'},
};

test.each([
	[[], -1],
	[['--json'], -1],
	[['--', 'solve'], 1],
	[['--'], -1],
	[['--json', '--', 'solve', 'x'], 2],
	[['solve'], 0],
	[['--json', 'solve', 'x'], 1],
	[['--profiles', 'solve', 'list'], 2],
	[['--profiles=here', 'list'], 1],
	[['--length', 'ft', '--json', 'solve'], 3],
])('`commandIndex` of %j is %i', (argv, index) => {
	expect(commandIndex(argv)).toBe(index);
});

test('`flagText` writes a key as it is typed', () => {
	expect(['json', 'addedDelay', 'x'].map(key => flagText(key))).toEqual(['--json', '--added-delay', '-x']);
});

test('`flagProblems` finds nothing in flags that were not given', () => {
	expect(flagProblems({rate: undefined, as: undefined}, known)).toEqual([]);
	expect(flagProblems({rate: 0, as: 'html', out: 'x'}, known)).toEqual([]);
});

test('`flagProblems` tells every fault: unknown, missing, no number, no choice', () => {
	expect(flagProblems({rate: Number.NaN, as: 'pdf', out: '', oot: true, zzzzzz: true}, known)).toEqual([
		'--rate: expected a number.',
		'--as: “pdf” is not a choice. Expected one of text, html.',
		'--out: the value is missing. Expected FILE.',
		'--oot: no such option. Did you mean --out?',
		'--zzzzzz: no such option. See --help for the options there are.',
	]);
});

test('`flagProblems` looks at each value of a repeated flag', () => {
	expect(flagProblems({as: ['text', 'pdf', '']}, known)).toHaveLength(2);
});
