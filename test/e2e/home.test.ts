import {copyFileSync, mkdirSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {atticPath} from './harness/profiles.ts';
import {runProgram, temporaryFolder} from './harness/program.ts';
import {openTerminal} from './harness/terminal.ts';

test('without a terminal and without profiles the settings of the demo are printed, and how to start is said', async () => {
	const {code, stdout, stderr} = await runProgram([]);
	expect(code).toBe(0);
	expect(stdout).toContain('Cellar 2026');
	expect(stdout).toContain('Front left');
	expect(stderr).toContain('demo');
	expect(stderr).toContain('Run roomtare in a terminal');
});

test('without a terminal the newest own profile is printed', async () => {
	const folder = temporaryFolder();
	mkdirSync(join(folder, 'mine'));
	copyFileSync(atticPath.replace('2026', '2025'), join(folder, 'mine/older.json'));
	const {code, stdout, stderr} = await runProgram(['--profiles', join(folder, 'mine')]);
	expect(code).toBe(0);
	expect(stdout).toContain('Attic 2025');
	expect(stderr).toContain('older.json');
	expect(stderr).not.toContain('demo');
});

test('`--json` without a command prints JSON alone on standard output', async () => {
	const {stdout} = await runProgram(['--json']);
	expect(JSON.parse(stdout).channels).toHaveLength(11);
});

test('`walk` without a terminal ends with 2 and names what works without one', async () => {
	const {code, stdout, stderr} = await runProgram(['walk', 'cellar-2026']);
	expect({code, stdout}).toEqual({code: 2, stdout: ''});
	expect(stderr).toContain('roomtare solve cellar-2026');
});

test.each(['DEV', 'CI'])('the app is drawn where the environment says %s=true', async name => {
	const terminal = openTerminal([], {env: {[name]: 'true'}});
	await terminal.waitFor('profiles, newest first');
	terminal.type('q');
	expect(await terminal.ended).toMatchObject({code: 0});
});
