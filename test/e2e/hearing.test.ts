import {copyFileSync, mkdirSync, readFileSync, renameSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {parseProfile} from '../../source/profile/file/parse.ts';
import {eveningProfile, eveningWave} from '../study/hearing/simulated/evening.ts';
import {runProgram, temporaryFolder} from './harness/program.ts';
import {openTerminal} from './harness/terminal.ts';

const read = (path: string) => {
	const parsed = parseProfile(readFileSync(path), path);
	if (!parsed.ok) throw new Error(`${path} does not parse.`);
	return parsed.profile;
};

test('a round is written, its recording arrives in the watched folder, is heard by the worker and taken', async () => {
	const folder = temporaryFolder();
	for (const name of ['profiles', 'arriving']) mkdirSync(join(folder, name));
	const path = join(folder, 'profiles', 'cellar.json');
	writeFileSync(path, JSON.stringify({...eveningProfile(), walk: {prompt: 'bass'}}));
	// A phone's recording in one file; the sub comes 4 ms late. A door slams in the first playing, so that it is played again; then
	// with the sub turned.
	const late = {delayMs: {sub1: 4}};
	const recording = join(folder, 'evening.wav');
	const slam = {playing: 0, channel: 'FR'};
	writeFileSync(recording, eveningWave([late, late, {...late, sign: {sub1: -1}}], slam));

	const terminal = openTerminal(['walk', 'cellar', '--profiles', 'profiles', '--recordings', 'arriving'], {
		folder,
	});
	await terminal.waitFor('One file played, recorded at the seat');
	terminal.press('enter');
	await terminal.waitFor('Play one file, record it at the seat');
	terminal.type('w');
	await terminal.waitFor('Written to', 30_000);
	terminal.press('enter');
	await terminal.waitFor('Nothing lies there yet');
	copyFileSync(recording, join(folder, 'arriving', 'evening.part'));
	renameSync(join(folder, 'arriving', 'evening.part'), join(folder, 'arriving', 'evening.wav'));
	await terminal.waitFor('evening.wav:', 30_000);
	// The app is live while it hears.
	terminal.type('x');
	await terminal.waitFor('Path  x▌', 2000);
	terminal.press('backspace');
	await terminal.waitFor('Is this what was recorded?', 100_000);
	expect(terminal.screen()).toMatch(/1 +Reference seat, spare +as it stands/);
	expect(terminal.screen()).toMatch(/Front right: a noise ran into its sweep/);
	expect(terminal.screen()).toMatch(/2 +Reference seat +as it stands/);
	expect(terminal.screen()).toMatch(/3 +Reference seat +Subwoofer changed/);
	expect(read(path).recordings).toBeUndefined();
	terminal.press('enter');
	await terminal.waitFor('Recorded: +');
	const {recordings, responses} = read(path);
	expect(recordings).toHaveLength(2);
	expect(recordings![0]!.clockPpm).toBeCloseTo(-35, 1);
	expect(responses!.find(({part}) => part === 'subs')).toBeDefined();
	terminal.press('interrupt');
	expect((await terminal.ended).code).toBe(130);
});

test('`hear` takes what is sound only, and says what it takes a playing for', async () => {
	const folder = temporaryFolder();
	const path = join(folder, 'cellar.json');
	writeFileSync(path, JSON.stringify(eveningProfile()));
	writeFileSync(join(folder, 'evening.wav'), eveningWave([{}, {sign: {sub1: -1}}]));
	const wrong = await runProgram(['hear', path, 'evening.wav', '--playing', '1=balcony'], {folder});
	expect(wrong.code).toBe(2);
	expect(wrong.stderr).toContain('--playing 1=balcony: expected the number of a playing');
	const spare = await runProgram(['hear', path, 'evening.wav', '--playing', '2=spare', '--take', '--json'], {
		folder,
		deadlineMs: 100_000,
	});
	expect(spare.code).toBe(0);
	const told = JSON.parse(spare.stdout);
	expect(told.playings.map(({isUsed}: {isUsed: boolean}) => isUsed)).toEqual([true, false]);
	expect(told.seats[0].isToldApart).toBe(false);
	expect(read(path).recordings).toHaveLength(1);
	// The same file once more replaces what was taken of it.
	const both = await runProgram(['hear', path, 'evening.wav', '--take'], {folder, deadlineMs: 100_000});
	expect(both.code).toBe(0);
	expect(both.stdout).toContain('mains and subs told apart');
	expect(read(path).recordings).toHaveLength(2);
});
