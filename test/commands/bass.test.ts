import fs from 'node:fs';
import {tmpdir} from 'node:os';
import {join, resolve} from 'node:path';
import {afterAll, expect, test} from 'vitest';
import {command as blend} from '../../source/commands/blend.ts';
import type {Command} from '../../source/commands/command.ts';
import {command as signals} from '../../source/commands/signals.ts';

const folder = fs.mkdtempSync(join(tmpdir(), 'roomtare-bass-'));
afterAll(() => fs.rmSync(folder, {recursive: true, force: true}));

const small = {
	format: 1,
	name: 'Invented room',
	date: '2026-04-18',
	room: {name: 'Invented room'},
	seats: [{id: 'sofa', name: 'Sofa', reference: true}],
	channels: [{id: 'FL'}, {id: 'FR'}, {id: 'LFE1'}],
	subs: [{id: 'sub1', name: 'Sub', fedBy: 'LFE1'}],
};

/** Runs a command with a small profile on standard input. */
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
		readStandardInput: async () => Buffer.from(JSON.stringify(small)),
		now: () => new Date(2026, 3, 18, 12),
	});
	return {code, out: out.join('\n'), said: said.join('\n')};
}

test('blend says no and lists the readings when no tone was read', async () => {
	const {code, out} = await run(blend, ['-']);
	expect(code).toBe(1);
	expect(out).toMatch(/Next: 18 readings at Sofa/);
});

test('blend offers the recording first, where its file can be played', async () => {
	const {out} = await run(blend, ['-']);
	expect(out).toMatch(/signals --round, then hear\): 2\s+playings/);
	expect(out.indexOf('signals --round')).toBeLessThan(out.indexOf('--way tones'));
});

test('blend --pair says no and why where there is one sub', async () => {
	const {code, out} = await run(blend, ['-'], {pair: true});
	expect(code).toBe(1);
	expect(out).toMatch(/not two subs.*Nothing is asked for/s);
});

test('blend prints each of its results whole as JSON', async () => {
	expect(JSON.parse((await run(blend, ['-'], {json: true})).out)).toMatchObject({
		seat: 'sofa',
		status: 'reading',
		tones: [],
	});
	const crossover = JSON.parse((await run(blend, ['-'], {json: true, crossover: true})).out);
	expect(Object.keys(crossover.channels)).toEqual(['FL', 'FR']);
	expect(crossover.channels.FL.ranking.length).toBe(12);
	const headroom = JSON.parse((await run(blend, ['-'], {json: true, headroom: true})).out);
	expect(headroom.sources.map(({source}: {source: string}) => source)).toEqual(['FL', 'FR', 'subs']);
});

test('blend reads the profiles that come with the program, in every form', async () => {
	for (const name of ['cellar-2025.json', 'cellar-2026.json']) {
		const path = resolve(import.meta.dirname, '../../profiles', name);
		for (const flags of [{}, {crossover: true}, {headroom: true}]) {
			expect((await run(blend, [path], flags)).out).toMatch(/^Cellar 202\d, /);
		}
	}
});

test('signals cautions first, writes what it lists, and refuses to replace it unless told to', async () => {
	const target = join(folder, 'tones');
	const {code, out, said} = await run(signals, [target], {profile: '-', level: '-20'});
	expect(code).toBe(0);
	expect(said).toMatch(/^Turn the master volume down before the first file/);
	const names = fs.readdirSync(target);
	// Left and right alone, a row of tones for each, noise for mains and subs, three tones, the count, three channels, two
	// noises to verify with.
	expect(names.length).toBe(2 + 2 + 2 + 3 + 1 + 3 + 2);
	for (const name of names) expect(out).toContain(name);
	await expect(run(signals, [target], {profile: '-'})).rejects.toThrow(/exist already; nothing was written/);
	expect((await run(signals, [target], {force: true})).code).toBe(0);
	expect(fs.readdirSync(target).length).toBe(names.length);
});

test('signals lists its files with level and correction as JSON', async () => {
	const {files} = JSON.parse((await run(signals, [join(folder, 'json')], {json: true})).out);
	expect(files.find(({file}: {file: string}) => file === 'sub-noise.wav')).toMatchObject({
		levelDbfs: -30,
		reads: {C: expect.closeTo(-1.23, 2)},
	});
});
