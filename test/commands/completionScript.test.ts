import {spawnSync} from 'node:child_process';
import {expect, test} from 'vitest';
import {completionScript} from '../../source/commands/completionScript.ts';

const commands = [
	{
		name: 'solve',
		summary: "What to dial in, the room's settings",
		takesFiles: true,
		options: [
			{text: '--exact', help: 'Unrounded [too]', takesValue: false, choices: []},
			{text: '--length', help: 'Unit', takesValue: true, choices: ['ft', 'm']},
		],
	},
	{name: 'schema', summary: 'The schema', takesFiles: false, options: []},
];

/** Asks bash itself what the script completes for these words, the last one being typed. */
function completedByBash(...words: readonly string[]): string[] {
	const ask = `${completionScript('bash', commands)}
COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _roomtare; printf '%s\\n' "\${COMPREPLY[@]}"`;
	const {stdout, stderr, status} = spawnSync('bash', ['-c', ask, 'bash', ...words], {encoding: 'utf8'});
	expect({stderr, status}).toEqual({stderr: '', status: 0});
	return stdout.split('\n').filter(line => line !== '');
}

test('bash completes commands, options and the choices of an option', () => {
	expect(completedByBash('roomtare', 's')).toEqual(['solve', 'schema']);
	expect(completedByBash('roomtare', 'solve', '--')).toEqual(['--exact', '--length']);
	expect(completedByBash('roomtare', 'solve', '--length', '')).toEqual(['ft', 'm']);
	expect(completedByBash('roomtare', 'zzz', '--')).toEqual([]);
});

test('the scripts for zsh and fish name every command and option, with quotes kept safe', () => {
	const zsh = completionScript('zsh', commands);
	expect(zsh).toContain(String.raw`'solve:What to dial in, the room'\''s settings'`);
	expect(zsh).toContain("'--length[Unit]:value:(ft m)'");
	expect(zsh).toContain("'--exact[Unrounded  too ]'");
	const fish = completionScript('fish', commands);
	expect(fish).toContain("-l length -x -a 'ft m' -d 'Unit'");
	expect(fish).toContain('-f -a schema');
});
