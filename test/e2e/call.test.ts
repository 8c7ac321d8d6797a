import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {builtProgram, projectFolder, runProgram} from './harness/program.ts';
import {openTerminal} from './harness/terminal.ts';

const {version} = JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8')) as {version: string};

test('`--version` prints the version alone', async () => {
	expect(await runProgram(['--version'])).toMatchObject({code: 0, stdout: `${version}\n`, stderr: ''});
});

test('`--version` after a command prints the version too', async () => {
	expect(await runProgram(['completion', '--version'])).toMatchObject({code: 0, stdout: `${version}\n`});
});

test('`--help` lists every command and the exit codes on standard output', async () => {
	const {code, stdout, stderr} = await runProgram(['--help']);
	expect({code, stderr}).toEqual({code: 0, stderr: ''});
	expect(stdout).toContain('  completion');
	expect(stdout).toContain('Exit codes');
	expect(await runProgram(['-h'])).toMatchObject({code: 0, stdout});
});

test('an unknown command ends with 2 and names its neighbour', async () => {
	const {code, stdout, stderr} = await runProgram(['completoin']);
	expect({code, stdout}).toEqual({code: 2, stdout: ''});
	expect(stderr).toBe('“completoin” is not a command. Did you mean completion?\n');
});

test('all faults of a call are told at once', async () => {
	const {code, stdout, stderr} = await runProgram(['--length', 'yards', 'completion', '--jsn', '--profiles']);
	expect({code, stdout}).toEqual({code: 2, stdout: ''});
	expect(stderr.trimEnd().split('\n')).toEqual([
		'--length: “yards” is not a choice. Expected one of ft-in, ft, m, cm.',
		'--jsn: no such option. Did you mean --json?',
		'--profiles: the value is missing. Expected DIR.',
		'completion: SHELL is missing. Usage: roomtare completion SHELL',
	]);
});

test('global flags may stand before the command', async () => {
	const {code, stdout} = await runProgram(['--length', 'ft', '--json', 'completion', 'bash']);
	expect(code).toBe(0);
	expect(Array.isArray(JSON.parse(stdout))).toBe(true);
});

test.each(['__proto__', 'constructor', '--__proto__', '--constructor=1', '--a.b.c=1'])(
	'the word %s is refused as any other',
	async word => {
		expect(await runProgram([word])).toMatchObject({code: 2, stdout: ''});
	},
);

test('the terminal of the harness shows what the program prints and its exit code', async () => {
	const terminal = openTerminal(['--version'], {columns: 40, rows: 5});
	expect(await terminal.waitFor(version)).toBe(version);
	expect(await terminal.ended).toEqual({code: 0, signal: undefined});
	await expect(terminal.waitFor('something else')).rejects.toThrow('ended with code 0');
});

test('the built program can be executed as it is', () => {
	expect(readFileSync(builtProgram, 'utf8').startsWith('#!/usr/bin/env node\n')).toBe(true);
});
