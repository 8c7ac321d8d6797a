import fs from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll, expect, test} from 'vitest';
import {WaveFile} from 'wavefile';
import type {Command} from '../../source/commands/command.ts';
import {command as response} from '../../source/commands/response.ts';
import {command as signals} from '../../source/commands/signals.ts';
import {responseFrequencies} from '../../source/study/hearing/responses.ts';

const folder = fs.mkdtempSync(join(tmpdir(), 'roomtare-response-'));
afterAll(() => fs.rmSync(folder, {recursive: true, force: true}));

const room = {
	format: 1,
	name: 'Invented room',
	date: '2026-04-18',
	room: {name: 'Invented room'},
	seats: [
		{id: 'sofa', name: 'Sofa', reference: true},
		{id: 'chair', name: 'Chair'},
	],
	channels: [{id: 'FL'}, {id: 'FR'}, {id: 'FC'}, {id: 'LFE1'}],
	subs: [{id: 'sub1', name: 'Sub', fedBy: 'LFE1'}],
};

async function run(
	command: Command,
	input: readonly string[],
	flags: Readonly<Record<string, unknown>> = {},
) {
	const out: string[] = [];
	const defaults = Object.fromEntries(
		Object.entries(command.flags ?? {}).map(([key, flag]) => [key, flag.default]),
	);
	const code = await command.run({
		input,
		flags: {...defaults, profiles: folder, ...flags},
		out: text => out.push(text),
		say: () => {},
		isTerminal: false,
		columns: 80,
		readStandardInput: async () => Buffer.from(JSON.stringify(room)),
		now: () => new Date(2026, 3, 18, 12),
	});
	return {code, out: out.join('\n')};
}

/** A file of text columns on a sixth-octave grid from 20 Hz to 20 kHz. */
function columnsFile(name: string, levelDb: (hertz: number) => number): string {
	const file = join(folder, name);
	const rows = Array.from({length: 61}, (_, index) => 20 * 2 ** (index / 6));
	fs.writeFileSync(
		file,
		`* hertz, dB\n${rows.map(hertz => `${hertz.toFixed(3)}\t${levelDb(hertz).toFixed(3)}`).join('\n')}\n`,
	);
	return file;
}

test('response shows text columns from anywhere: a flat curve stays flat under every smoothing', async () => {
	const flat = columnsFile('flat.txt', () => 70);
	for (const smoothing of ['3', '6', '12', '24']) {
		const {code, out} = await run(response, [flat], {json: true, smoothing});
		expect(code).toBe(0);
		const {curves} = JSON.parse(out) as {curves: Array<{levelsDb: number[]; isMicrophoneKnown: boolean}>};
		expect(curves).toHaveLength(1);
		// The mean of equal powers is that power; the file holds three places.
		for (const level of curves[0]!.levelsDb) expect(level).toBeCloseTo(70, 2);
	}
});

test('response compares a pair: nothing between a curve and itself, and more the deeper one has a hole', async () => {
	const hole = (depthDb: number) => (hertz: number) =>
		70 - depthDb * Math.exp(-((Math.log2(hertz / 63) * 3) ** 2));
	const flat = columnsFile('flat.txt', () => 70);
	const apart = async (other: string) =>
		(JSON.parse((await run(response, [flat, other], {json: true})).out) as {distanceDb: number}).distanceDb;
	expect(await apart(flat)).toBeCloseTo(0, 6);
	const shallow = await apart(columnsFile('shallow.csv', hole(4)));
	const deep = await apart(columnsFile('deep.csv', hole(12)));
	expect(shallow).toBeGreaterThan(0.3);
	expect(deep).toBeGreaterThan(2 * shallow);
});

test('response says what it expected of a file without a curve in it', async () => {
	const file = join(folder, 'letter.txt');
	fs.writeFileSync(file, 'Dear neighbour,\nthe bass is lovely.\n');
	await expect(run(response, [file])).rejects.toThrow(
		/letter\.txt holds no curve: expected lines with a frequency/,
	);
	fs.writeFileSync(file, '');
	await expect(run(response, [file])).rejects.toThrow(/letter\.txt is empty\. Export the curve again/);
	await expect(run(response, [join(folder, 'none.txt')])).rejects.toThrow(/There is no file .*none\.txt/);
});

test('response of a profile without a recording says no, and how to record', async () => {
	const {code, out} = await run(response, ['-']);
	expect(code).toBe(1);
	expect(out).toMatch(/No response was recorded .* signals DIR --round/);
	expect(JSON.parse((await run(response, ['-'], {json: true})).out)).toEqual({curves: []});
});

test('signals --round writes a file of two channels that a general reader opens, and says who plays when', async () => {
	const target = join(folder, 'round');
	const {code, out} = await run(signals, [target], {round: true, profile: '-', json: true});
	expect(code).toBe(0);
	const told = JSON.parse(out) as {
		folder: string;
		file: {file: string};
		playings: Array<{seat: string}>;
	};
	// The reference seat is recorded before any other.
	expect(told.playings[0]!.seat).toBe('sofa');
	expect(told.playings.some(({seat}) => seat === 'chair')).toBe(true);
	const wave = new WaveFile(fs.readFileSync(join(target, told.file.file)));
	expect(wave.fmt).toMatchObject({numChannels: 2, sampleRate: 48_000, bitsPerSample: 24});
});

test('signals --round leaves files that are there alone unless told otherwise', async () => {
	const target = join(folder, 'again');
	await run(signals, [target], {round: true, profile: '-'});
	await expect(run(signals, [target], {round: true, profile: '-'})).rejects.toThrow(/--force/);
	expect((await run(signals, [target], {round: true, profile: '-', force: true})).code).toBe(0);
});

test('signals --round tells in words how to play and record', async () => {
	const {out} = await run(signals, [join(folder, 'words')], {round: true, profile: '-'});
	expect(out).toMatch(/upmix/i);
	expect(out).toMatch(/ear/i);
	for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
});

/** A profile of one recording: the front left with the sub behind it has a hole at 60 Hz, the sub alone none. */
function recordedRoom() {
	const count = responseFrequencies().length;
	const flat = Array.from({length: count}, () => -30);
	const holed = [...responseFrequencies()].map(hertz => (Math.abs(Math.log2(hertz / 60)) < 0.1 ? -50 : -30));
	const phasesDegrees = flat.map(() => 0);
	const made = {seat: 'sofa', recording: 'r1', round: 'first', sha256: 'x'};
	return {
		...room,
		recordings: [
			{id: 'r1', file: 'a.wav', sha256: 'a', atSeconds: 0, seat: 'sofa', round: 'first', clockPpm: 0},
		],
		responses: [
			{...made, source: 'FL', part: 'all', levelDb: -30, points: {levelsDb: holed, phasesDegrees}},
			{...made, source: 'sub1', part: 'subs', points: {levelsDb: flat, phasesDegrees}},
		],
	};
}

test('response of a profile shows what was recorded of a line, and of the subs by themselves', async () => {
	const file = join(folder, 'recorded.json');
	fs.writeFileSync(file, JSON.stringify(recordedRoom()));
	const {code, out} = await run(response, [file], {source: 'FL'});
	expect(code).toBe(0);
	expect(out).toMatch(/dips in the bass −\d+ dB at (59|60|61) Hz/);
	// Nobody gave the microphone's curve: nothing is said of tilt and low limit, and the recorder's colour is named.
	expect(out.replace(/\s+/g, ' ')).toContain('with the recorder’s own colour');
	expect(out).not.toMatch(/dB per octave|reaches down to/);
	const subs = await run(response, [file], {part: 'subs', source: 'sub1', words: true});
	expect(subs.out).not.toContain('dips in the bass');
	for (const line of subs.out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
	const {curves} = JSON.parse((await run(response, [file], {json: true})).out) as {curves: unknown[]};
	expect(curves).toHaveLength(1);
	expect((await run(response, [file], {source: 'FC'})).code).toBe(1);
});

test('signals --round with all channels says what its first playing alone is good for, the file of two does not', async () => {
	const all = await run(signals, [join(folder, 'all')], {round: true, profile: '-', size: 'all'});
	expect(all.out.replace(/\s+/g, ' ')).toMatch(/first playing alone, nothing touched, .* louder in \d+ %/);
	const two = await run(signals, [join(folder, 'two')], {round: true, profile: '-', size: 'two'});
	expect(two.out).not.toContain('LFE sweep');
});
