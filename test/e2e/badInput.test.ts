import {execFileSync, spawnSync} from 'node:child_process';
import {existsSync, mkdirSync, readdirSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, test} from 'vitest';
import {attic, fileWith} from './harness/profiles.ts';
import {builtProgram, runProgram, temporaryFolder} from './harness/program.ts';

type Broken = Parameters<NonNullable<Parameters<typeof attic>[0]>>[0];

const broken: ReadonlyArray<readonly [what: string, content: string | Uint8Array, said: RegExp]> = [
	['an empty file', '', /empty|nothing/i],
	['a binary file', Uint8Array.from({length: 4096}, (_, index) => (index * 37) % 256), /text|UTF-8|JSON/],
	['truncated JSON', attic().slice(0, 5000), /cut short/],
	['a list', '[]', /list/],
	['a bare number', '42', /42/],
	['deep nesting', `${'[{"a":'.repeat(50_000)}1${'}]'.repeat(50_000)}`, /64/],
	['NaN as a value', attic().replace(/"metres":[\d.]+/, '"metres":NaN'), /NaN|JSON/],
	['Infinity as a value', attic().replace(/"metres":[\d.]+/, '"metres":Infinity'), /JSON|Infinity/],
	['a number too large', attic().replace(/"metres":[\d.]+/, '"metres":1e999'), /tape\[0\]\.metres/],
	[
		'a wrong type',
		attic((profile: Broken) => Object.assign(profile.tape[3], {metres: '2.86'})),
		/tape\[3\]\.metres.*2\.86/,
	],
	[
		'a negative distance',
		attic((profile: Broken) => Object.assign(profile.tape[0], {metres: -1})),
		/tape\[0\]\.metres.*-1/,
	],
	[
		'a channel twice',
		attic((profile: Broken) => profile.channels.push(profile.channels[0])),
		/channels\[\d+\].*FL/,
	],
	[
		'an unknown channel',
		attic((profile: Broken) => Object.assign(profile.channels[0], {id: 'FLL'})),
		/channels\[0\]\.id.*FLL/,
	],
	[
		'no reference seat',
		attic((profile: Broken) => {
			for (const seat of profile.seats) delete seat.reference;
			profile.seats.push({...profile.seats[0], id: 'other', name: 'Other'});
		}),
		/reference/,
	],
	[
		'a reading of nothing known',
		attic((profile: Broken) => Object.assign(profile.meter[0], {source: 'sub9'})),
		/meter\[0\].*sub9/,
	],
	['a format of the future', attic((profile: Broken) => Object.assign(profile, {format: 99})), /format.*99/],
];

test.each(broken)('%s ends with 2, in words, and leaves the file as it is', async (_, content, said) => {
	const path = fileWith(content);
	const before = readFileSync(path);
	for (const command of ['solve', 'check']) {
		const {code, stdout, stderr} = await runProgram([command, path]);
		expect({code, stdout}).toEqual({code: 2, stdout: ''});
		expect(stderr).toMatch(said);
		expect(stderr).toContain(path);
		expect(stderr).not.toMatch(/fault in roomtare|at .*\.[cm]?js:\d/);
	}

	expect(readFileSync(path)).toEqual(before);
});

test('every problem of a file is told at once', async () => {
	const path = fileWith(
		attic((profile: Broken) => {
			profile.tape[0].metres = -1;
			profile.meter[0].decibels = 'loud';
			profile.channels[0].id = 'FLL';
		}),
	);
	const {code, stderr} = await runProgram(['check', path]);
	expect(code).toBe(2);
	for (const place of ['tape[0].metres', 'meter[0].decibels', 'channels[0].id'])
		expect(stderr).toContain(place);
});

test('`check --json` prints the problems as data too', async () => {
	const path = fileWith(attic((profile: Broken) => Object.assign(profile.tape[0], {metres: -1})));
	const {code, stdout} = await runProgram(['check', path, '--json']);
	expect(code).toBe(2);
	expect(JSON.parse(stdout)).toMatchObject({isUsable: false, problems: [{path: 'tape[0].metres'}]});
});

test('a file that is not there, a folder, and a missing folder end with 2 and name what was asked for', async () => {
	const folder = temporaryFolder();
	mkdirSync(join(folder, 'inner.json'));
	for (const args of [
		['solve', 'nowhere'],
		['solve', join(folder, 'nowhere.json')],
		['solve', join(folder, 'inner.json')],
		['check', join(folder, 'no/such/folder/room.json')],
	]) {
		const {code, stdout, stderr} = await runProgram(args, {folder});
		expect({code, stdout}).toEqual({code: 2, stdout: ''});
		expect(stderr).toMatch(/nowhere|inner|no\/such/);
		expect(stderr).not.toContain('fault in roomtare');
	}
});

test('an empty standard input is an empty file', async () => {
	const {code, stdout, stderr} = await runProgram(['solve', '-'], {input: ''});
	expect({code, stdout}).toEqual({code: 2, stdout: ''});
	expect(stderr).toContain('standard input');
});

describe('what is no file, and where nothing can be written', () => {
	test('a pipe or a device is no profile, and a folder with one is listed all the same', async () => {
		const folder = temporaryFolder();
		mkdirSync(join(folder, 'mine'));
		execFileSync('mkfifo', [join(folder, 'mine/pipe.json')]);
		const listed = await runProgram(['list', '--profiles', 'mine'], {folder, deadlineMs: 20_000});
		expect(listed).toMatchObject({code: 0, signal: null});
		expect(listed.stdout).toContain('not a file');
		for (const path of ['/dev/zero', 'mine/pipe.json']) {
			const ran = await runProgram(['check', path], {folder, deadlineMs: 20_000});
			expect(ran).toMatchObject({code: 2, signal: null});
			expect(ran.stderr).toContain('is a pipe or a device');
		}
	});

	test('a name longer than files may have is a profile that is not there', async () => {
		const {code, stderr} = await runProgram(['solve', 'a'.repeat(5000)]);
		expect(code).toBe(2);
		expect(stderr).toContain('There is no profile');
		expect(stderr.length).toBeLessThan(1000);
	});

	test.runIf(existsSync('/dev/full'))('a full disk behind standard output is told in a sentence', () => {
		const {status, stderr} = spawnSync(
			'sh',
			['-c', `"${process.execPath}" "${builtProgram}" schema > /dev/full`],
			{
				encoding: 'utf8',
			},
		);
		expect(status).toBe(2);
		expect(stderr.trim()).toBe(
			'Standard output could not be written (the disk is full). What is there is not whole.',
		);
	});

	test.runIf(existsSync('/proc/self'))(
		'a folder that takes no folders is refused, not tried for ever',
		async () => {
			const ran = await runProgram(['signals', '/proc/signals'], {deadlineMs: 20_000});
			expect(ran).toMatchObject({code: 2, signal: null});
		},
	);

	test('an empty HOME keeps nothing in the folder one happens to be in', async () => {
		const folder = temporaryFolder();
		const env = {HOME: '', XDG_DATA_HOME: ''};
		const {stdout} = await runProgram(['list', '--json'], {folder, env});
		expect(JSON.parse(stdout).folder).not.toContain(folder);
		expect(readdirSync(folder)).toEqual([]);
	});
});

test('with --json trouble is JSON on standard output, once, and words on standard error', async () => {
	for (const args of [
		['solve', 'nosuch', '--json'],
		['solve', '--json'],
		['nosuch', '--json'],
	]) {
		const {code, stdout, stderr} = await runProgram(args);
		expect(code).toBe(2);
		const {error, problems} = JSON.parse(stdout);
		expect(error).toBe('trouble');
		expect(stderr).toContain(problems[0]);
	}
});
