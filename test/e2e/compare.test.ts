import {mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {attic, atticPath, fileWith} from './harness/profiles.ts';
import {runProgram, temporaryFolder} from './harness/program.ts';

type Broken = Parameters<NonNullable<Parameters<typeof attic>[0]>>[0];

const older = atticPath.replace('2026', '2025');
const newer = atticPath;

test('`diff` ends with 1 and shows reasons where the demo rooms differ', async () => {
	const {code, stdout, stderr} = await runProgram(['diff', older, newer]);
	expect({code, stderr}).toEqual({code: 1, stderr: ''});
	expect(stdout).toContain('Set differently');
	expect(stdout).toMatch(/Front right +distance .* distance −0\.35 m/);
});

test('`diff` ends with 0 for one profile twice, and says so', async () => {
	const {code, stdout, stderr} = await runProgram(['diff', newer, newer]);
	expect(code).toBe(0);
	expect(stderr).toContain('is given twice');
	expect(stdout).toContain('Nothing differs');
});

test('`diff` takes one profile from standard input and ends with 2 for both', async () => {
	const input = readFileSync(atticPath);
	expect((await runProgram(['diff', '-', newer], {input})).code).toBe(0);
	const both = await runProgram(['diff', '-', '-'], {input});
	expect(both.code).toBe(2);
	expect(both.stderr).toContain('stands twice');
});

test('`diff` tells different rooms and compares what can be compared', async () => {
	const path = fileWith(attic((profile: Broken) => Object.assign(profile.room, {name: 'Barn'})));
	const {code, stdout} = await runProgram(['diff', newer, path]);
	expect(code).toBe(0);
	expect(stdout).toContain('The rooms differ, Attic cinema and Barn.');
});

test('`diff` refuses another format with a sentence and code 2', async () => {
	const path = fileWith(attic((profile: Broken) => Object.assign(profile, {format: 99})));
	const {code, stdout, stderr} = await runProgram(['diff', newer, path]);
	expect({code, stdout}).toEqual({code: 2, stdout: ''});
	expect(stderr).toContain('99');
});

test('`diff --json` splits every change so that its parts add up', async () => {
	const {stdout} = await runProgram(['diff', older, newer, '--json']);
	const {settings} = JSON.parse(stdout);
	const split = settings.filter(({parts, change}: Broken) => parts.length > 0 && change !== undefined);
	expect(split.length).toBeGreaterThan(10);
	for (const {parts, change} of split) {
		const total = parts.reduce((sum: number, {amount}: Broken) => sum + amount, 0);
		expect(total).toBeCloseTo(change, 6);
	}
});

test('`diff --plan` draws both rooms, tells the turned room in words and what moved how far', async () => {
	const {code, stdout, stderr} = await runProgram(['diff', older, newer, '--plan']);
	expect({code, stderr}).toEqual({code: 1, stderr: ''});
	expect(stdout).toMatch(/Before: Attic 2025 .* After: Attic 2026/);
	expect(stdout).toMatch(/The room is turned round/);
	expect(stdout).toContain('Sub at the screen: 3.47 m to the left; now 0.36 m from the left wall.');
});

test('`diff --plan --as markdown` keeps the drawing in a block of code', async () => {
	const {stdout} = await runProgram(['diff', older, newer, '--plan', '--as', 'markdown']);
	const [, block, after] = stdout.split(/^```(?:text)?$/m);
	expect(block).toMatch(/[⠁-⣿]/);
	expect(after).toMatch(/^- Sub at the screen: 3\.47 m/m);
	expect(after).not.toMatch(/[⠁-⣿]/);
});

test('`diff --plan --json` gives every move in metres, `diff --json` none', async () => {
	const {plan} = JSON.parse((await runProgram(['diff', older, newer, '--plan', '--json'])).stdout);
	expect(plan.turn).toEqual({turn: 'half', by: 'ceiling'});
	expect(plan.moved[0]).toMatchObject({id: 'sub1', name: 'Sub at the screen'});
	expect(JSON.parse((await runProgram(['diff', older, newer, '--json'])).stdout).plan).toBeUndefined();
});

test('`diff` of three profiles shows each step and then the whole', async () => {
	const {stdout} = await runProgram(['diff', older, newer, newer, '--as', 'markdown']);
	expect(stdout.match(/^# /gm)).toHaveLength(3);
	expect(stdout.match(/Attic 2025 \(2025-04-12\) → Attic 2026/g)).toHaveLength(2);
});

test('`proof` finds the demo proved, and missed with a turned sign that it names', async () => {
	expect(await runProgram(['proof', newer])).toMatchObject({code: 0, stderr: ''});
	let trimDb = 0;
	const path = fileWith(
		attic((profile: Broken) => {
			// A trim typed in with the wrong sign is off by twice itself.
			trimDb = profile.settings.find(({id}: Broken) => id === 'decided').channels.FC.trimDb.stepped;
			for (const reading of profile.meter) {
				if (reading.round === 'proof' && reading.source === 'FC') reading.decibels -= 2 * trimDb;
			}
		}),
	);
	const {code, stdout} = await runProgram(['proof', path]);
	expect(code).toBe(1);
	expect(stdout).toContain('Proof missed.');
	expect(trimDb).toBeLessThan(-1);
	const size = Math.abs(trimDb).toFixed(1);
	expect(stdout.replaceAll(/\s+/g, ' ')).toContain(`+${size} dB stands there instead of −${size} dB`);
});

test('`proof` ends with 1 without a second round and lists what to read', async () => {
	const path = fileWith(
		attic((profile: Broken) =>
			Object.assign(profile, {meter: profile.meter.filter(({round}: Broken) => round === 'first')}),
		),
	);
	const {code, stdout} = await runProgram(['proof', path]);
	expect(code).toBe(1);
	expect(stdout).toContain('Still to read');
});

test('`history` shows a room from first to last and leaves out what is no profile, saying so', async () => {
	const folder = join(temporaryFolder(), 'profiles');
	mkdirSync(folder);
	for (const id of ['attic-2025', 'attic-2026'])
		writeFileSync(join(folder, `${id}.json`), readFileSync(atticPath.replace('attic-2026', id)));
	writeFileSync(join(folder, 'spoilt.json'), '{');
	const {code, stdout, stderr} = await runProgram(['history', '--profiles', folder]);
	expect(code).toBe(0);
	expect(stderr).toContain('spoilt: not JSON. Left out.');
	expect(stdout).toContain('Attic cinema: 2 profiles, 2025-04-12 to 2026-04-18');
	expect(stdout).toMatch(/Front left +3\.48 m → 3\.26 m/);
	const wrong = await runProgram(['history', '--profiles', folder, '--room', 'Barn']);
	expect(wrong.code).toBe(2);
	expect(wrong.stderr).toContain('“Attic cinema”');
});
