import {spawnSync} from 'node:child_process';
import {expect, test} from 'vitest';
import {builtProgram, runProgram} from './harness/program.ts';

/** Names of the commands, from the program itself, so that no new one is forgotten. */
const {stdout: listed} = spawnSync(process.execPath, [builtProgram, 'completion', 'bash', '--json'], {
	encoding: 'utf8',
});
const names = (JSON.parse(listed) as Array<{name: string}>).map(({name}) => name);

test('`--help` shows the program as it stands, line by line', async () => {
	const {code, stdout: help, stderr} = await runProgram(['--help']);
	expect({code, stderr}).toEqual({code: 0, stderr: ''});
	await expect(help).toMatchFileSnapshot('help/roomtare.txt');
});

test.each(names)('`%s --help` shows usage, options and examples as they stand, line by line', async name => {
	const {code, stdout: help, stderr} = await runProgram([name, '--help']);
	expect({code, stderr}).toEqual({code: 0, stderr: ''});
	for (const part of ['\nUsage\n', '\nOptions\n', '\nExamples\n']) expect(help).toContain(part);
	await expect(help).toMatchFileSnapshot(`help/${name}.txt`);
});
