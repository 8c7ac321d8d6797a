import {existsSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {projectFolder, runProgram, temporaryFolder} from './harness/program.ts';

const readme = readFileSync(join(projectFolder, 'README.md'), 'utf8');
const calls = [...readme.matchAll(/^npx roomtare (.+)$/gm)].map(([, call]) => call!);

/** Words of a call as a shell splits them; enough for quotes. */
const split = (call: string) =>
	[...call.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare!);

test('the README shows the commands', () => {
	expect(calls.length).toBeGreaterThan(12);
});

test.each(calls)('“roomtare %s” of the README does what it says, in an empty folder', async call => {
	const [shown] = call.split(' > ');
	const {code, stdout, stderr} = await runProgram(split(shown!), {folder: temporaryFolder()});
	// Differing profiles, a place out of range or nothing measured are answers, not failures.
	expect([0, 1]).toContain(code);
	expect(stderr).not.toMatch(/no such|usage|unexpected/i);
	expect((stdout + stderr).length).toBeGreaterThan(20);
});

test('the README names no file that is not there', () => {
	for (const [, target] of readme.matchAll(/\]\(([A-Z]+\.md)\)/g)) {
		expect(existsSync(join(projectFolder, target!))).toBe(true);
	}
});

test('the first paragraph states the job', () => {
	const [, paragraph] = readme.split('\n\n');
	for (const word of ['tape measure', 'level meter', 'delays', 'trims', 'profile']) {
		expect(paragraph!.replace(/\s+/g, ' ')).toContain(word);
	}
});
