import fs from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll, expect, test} from 'vitest';
import type {Command} from '../../source/commands/command.ts';
import {command as copy} from '../../source/commands/copy.ts';
import {command as list} from '../../source/commands/list.ts';
import {command as create} from '../../source/commands/new.ts';
import {command as schema} from '../../source/commands/schema.ts';
import {profileJsonSchema} from '../../source/profile/file/jsonSchema.ts';
import {parseProfile} from '../../source/profile/file/parse.ts';

const folder = fs.mkdtempSync(join(tmpdir(), 'commands-'));
afterAll(() => fs.rmSync(folder, {recursive: true, force: true}));

/** Runs a command as the program does: defaults of its flags filled in. */
async function run(
	command: Command,
	input: readonly string[],
	flags: Readonly<Record<string, unknown>> = {},
) {
	const out: string[] = [];
	const said: string[] = [];
	const defaults = Object.fromEntries(
		Object.entries(command.flags ?? {}).map(([key, flag]) => [key, flag.default]),
	);
	const code = await command.run({
		input,
		flags: {...defaults, profiles: folder, ...flags},
		out: text => out.push(text),
		say: text => said.push(text),
		isTerminal: false,
		columns: 80,
		readStandardInput: async () => fs.readFileSync(join(folder, 'attic.json')),
		now: () => new Date(2026, 3, 18, 12),
	});
	return {code, out: out.join('\n'), said: said.join('\n')};
}

test('list says so where there is no profile, and shows the demos marked as such', async () => {
	expect(await run(list, [])).toMatchObject({
		code: 0,
		out: expect.stringMatching(/^profile .*\ncellar-2026 .* demo\ncellar-2025 .* demo$/),
		said: expect.stringContaining('Begin with “roomtare new”'),
	});
});

test('new writes a sound profile dated today, and refuses to overwrite it', async () => {
	const made = await run(create, [], {
		name: 'Attic',
		layout: '5.1.4',
		receiver: 'fine-metric',
		processor: 'digital',
		subs: 2,
		unit: 'ft-in',
	});
	expect(made).toMatchObject({code: 0, out: join(folder, 'attic.json')});
	const parsed = parseProfile(fs.readFileSync(join(folder, 'attic.json')), 'attic');
	expect(parsed).toMatchObject({ok: true, profile: {name: 'Attic', date: '2026-04-18', lengthUnit: 'ft-in'}});
	await expect(run(create, [], {name: 'attic'})).rejects.toThrow('exists already');
});

test('the middle figure of a layout is the number of subs', async () => {
	const {out} = await run(create, [], {name: 'Two subs', layout: '5.2.4', json: true});
	const {profile, path} = JSON.parse(out) as {profile: {channels: object[]; subs: object[]}; path: string};
	expect(profile.channels).toHaveLength(10);
	expect(profile.subs).toHaveLength(2);
	fs.rmSync(path);
});

test.each([
	[{}, '--name NAME is missing'],
	[{name: 'x', date: '2026-02-30'}, '“2026-02-30” is no date'],
	[{name: 'x', layout: '2.0', subs: 1}, 'no low-frequency channel'],
	[{name: 'x', layout: '5.9'}, '“5.9” is no layout'],
	[{name: 'x', layout: '5.2', subs: 3}, 'has 2 subs, but --subs says 3'],
	[{name: 'two\nlines'}, 'one line of up to 120 characters, without control'],
])('new refuses %j in words', async (flags, words) => {
	await expect(run(create, [], flags)).rejects.toThrow(words);
});

test('copy starts from a name and from standard input, and never writes over a file', async () => {
	expect(await run(copy, ['attic', 'Next year'], {date: '2027-04-18'})).toMatchObject({
		code: 0,
		out: join(folder, 'next-year.json'),
	});
	const {out} = await run(copy, ['-', 'Piped'], {json: true});
	expect(JSON.parse(out)).toMatchObject({
		path: join(folder, 'piped.json'),
		profile: {name: 'Piped', date: '2026-04-18', tape: []},
	});
	await expect(run(copy, ['attic', 'Piped'])).rejects.toThrow('exists already');
	await expect(run(copy, ['atic', 'Other'])).rejects.toThrow('Did you mean attic?');
});

test('copy names every problem of a broken profile', async () => {
	const path = join(folder, 'bad.json');
	fs.writeFileSync(path, '{"format": 1, "name": "x", "date": "y"}');
	await expect(run(copy, [path, 'Other'])).rejects.toThrow(
		/cannot be used:\n {2}date.*\n {2}room.*\n {2}seats.*\n {2}channels/,
	);
	fs.rmSync(path);
});

test('list shows profiles newest first, as a table and as JSON', async () => {
	const {out} = await run(list, []);
	const lines = out.split('\n');
	expect(lines[0]).toMatch(/^profile +name +date +room +tape +meter +state$/);
	expect(lines.slice(1).map(line => line.split(/ {2,}/)[0])).toEqual([
		'next-year',
		'attic',
		'piped',
		'cellar-2026',
		'cellar-2025',
	]);
	const {profiles} = JSON.parse((await run(list, [], {json: true})).out) as {profiles: object[]};
	expect(profiles[0]).toEqual({
		id: 'next-year',
		path: join(folder, 'next-year.json'),
		name: 'Next year',
		date: '2027-04-18',
		room: 'Attic',
		tapeReadings: 0,
		meterReadings: 0,
		state: 'new',
	});
});

test('schema prints the JSON Schema', async () => {
	expect(JSON.parse((await run(schema, [])).out)).toEqual(JSON.parse(JSON.stringify(profileJsonSchema())));
});
