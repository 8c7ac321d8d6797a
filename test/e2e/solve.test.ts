import {spawn} from 'node:child_process';
import {copyFileSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {attic, atticPath, fileWith} from './harness/profiles.ts';
import {builtProgram, cleanEnvironment, runProgram, temporaryFolder} from './harness/program.ts';

type Broken = Parameters<NonNullable<Parameters<typeof attic>[0]>>[0];

test('`solve` prints the same from a path, from a name and from standard input', async () => {
	const byPath = await runProgram(['solve', atticPath]);
	expect(byPath).toMatchObject({code: 0, stderr: ''});
	expect(byPath.stdout).toContain('Front left');
	const folder = temporaryFolder();
	copyFileSync(atticPath, join(folder, 'attic.json'));
	const byName = await runProgram(['--profiles', folder, 'solve', 'attic']);
	const byInput = await runProgram(['solve', '-'], {input: readFileSync(atticPath)});
	expect(byName.stdout).toBe(byPath.stdout);
	expect(byInput.stdout).toBe(byPath.stdout);
});

test('`solve` takes a byte-order mark', async () => {
	const {code, stdout} = await runProgram(['solve', '-', '--json'], {input: `\ufeff${attic()}`});
	expect(code).toBe(0);
	expect(JSON.parse(stdout).channels).toHaveLength(10);
});

test('`solve --json` prints JSON and nothing else, on standard output and without colour', async () => {
	const {code, stdout, stderr} = await runProgram(['solve', atticPath, '--json'], {env: {FORCE_COLOR: '3'}});
	expect({code, stderr}).toEqual({code: 0, stderr: ''});
	const solution = JSON.parse(stdout);
	expect(solution.channels.map(({id}: {id: string}) => id)).toContain('TpBR');
	expect(stdout).not.toContain('\u001b');
	expect(stdout.endsWith('}\n')).toBe(true);
});

test('`solve` draws no colour without a terminal or with NO_COLOR', async () => {
	for (const env of [{}, {NO_COLOR: '1'}, {NO_COLOR: '1', FORCE_COLOR: '1'}] as ReadonlyArray<
		Record<string, string>
	>) {
		expect((await runProgram(['solve', atticPath], {env})).stdout).not.toContain('\u001b');
	}
});

test('`solve --length` shows lengths in the unit asked for', async () => {
	const {stdout} = await runProgram(['--length', 'ft-in', 'solve', atticPath, '--why']);
	expect(stdout).toMatch(/\d+′ \d+/);
	const table = stdout.split('\n').find(line => line.startsWith('Front left'));
	expect(table).toMatch(/^Front left\s+\d+′ [\d /]+″/);
	expect((await runProgram(['--length', 'cm', 'solve', atticPath])).stdout).toMatch(
		/Front left\s+\d+\.\d cm/,
	);
});

test('`solve --exact` and `--why` add to the table and to the remarks', async () => {
	const plain = (await runProgram(['solve', atticPath])).stdout;
	const exact = (await runProgram(['solve', atticPath, '--exact'])).stdout;
	const why = (await runProgram(['solve', atticPath, '--why'])).stdout;
	expect(plain).not.toContain('exact');
	expect(exact).toContain('exact');
	expect(plain).toContain('--why');
	expect(why).toContain('\nNotes\n');
});

test('`solve` ends with 1 and still prints where nothing is measured', async () => {
	const path = fileWith(attic((profile: Broken) => Object.assign(profile, {tape: [], meter: []})));
	const text = await runProgram(['solve', path]);
	expect(text.code).toBe(1);
	expect(text.stdout).toContain('Problems');
	const {code, stdout} = await runProgram(['solve', path, '--json']);
	expect(code).toBe(1);
	expect(JSON.parse(stdout).channels.length).toBeGreaterThan(0);
});

test('`solve` shows no line wider than the width, but for names of what is missing', async () => {
	for (const columns of ['60', '80', '132']) {
		const {stdout} = await runProgram(['solve', atticPath, '--exact'], {env: {COLUMNS: columns}});
		const wide = stdout
			.split('\n')
			.filter(line => line.length > Number(columns) && !line.startsWith('Not shown'));
		expect(wide).toEqual([]);
	}
});

test('`check` finds the demo sound and a foot too much on the tape not', async () => {
	expect(await runProgram(['check', atticPath])).toMatchObject({code: 0, stderr: ''});
	const path = fileWith(
		attic((profile: Broken) => {
			const reading = profile.tape.find(
				({from, to}: Broken) => [from, to].includes('FL') && [from, to].includes('wall:left'),
			);
			reading.metres += 0.3048;
		}),
	);
	const {code, stdout} = await runProgram(['check', path]);
	expect(code).toBe(1);
	expect(stdout).toContain('Problems');
});

test('200,000 observations are read, checked and solved', async () => {
	const input = attic((profile: Broken) => {
		const {tape, meter} = profile;
		profile.tape = Array.from({length: 100_000}, (_, index) => tape[index % tape.length]);
		profile.meter = Array.from({length: 100_000}, (_, index) => meter[index % meter.length]);
	});
	const {code, stdout} = await runProgram(['solve', '-', '--json'], {input});
	expect([0, 1]).toContain(code);
	expect(JSON.parse(stdout).channels).toHaveLength(10);
});

test('a reader that closes early (`| head -1`) ends the program quietly', async () => {
	const folder = temporaryFolder();
	const child = spawn(
		'bash',
		['-c', `set -o pipefail; "${process.execPath}" "${builtProgram}" schema | head -1`],
		{
			env: cleanEnvironment(folder),
		},
	);
	let [stdout, stderr] = ['', ''];
	child.stdout.on('data', chunk => {
		stdout += chunk;
	});
	child.stderr.on('data', chunk => {
		stderr += chunk;
	});
	const code = await new Promise(done => child.on('close', done));
	expect({code, stderr, lines: stdout.split('\n').length}).toEqual({code: 0, stderr: '', lines: 2});
});

test('an interrupt ends with 130', async () => {
	const child = spawn(process.execPath, [builtProgram, 'solve', '-'], {
		env: cleanEnvironment(temporaryFolder()),
	});
	child.stdin.write('{');
	const ended = new Promise(done => child.on('close', done));
	// The program listens for the interrupt before it asks for input; a try that comes sooner ends it by the signal.
	await new Promise(done => setTimeout(done, 1500));
	child.kill('SIGINT');
	expect(await ended).toBe(130);
});
