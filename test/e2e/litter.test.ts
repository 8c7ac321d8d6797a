import {spawn} from 'node:child_process';
import {readdirSync, utimesSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
// @ts-expect-error: a plain script, without types.
import {saverBundle} from '../fuzz/saverBundle.js';
import {runProgram, temporaryFolder} from './harness/program.ts';
import {openTerminal} from './harness/terminal.ts';

/** Most saving processes that are killed until one leaves something; about three of four do. */
const mostKills = 40;
const isProfile = (name: string) => /^den(\.previous)?\.json$/.test(name);

/** Kills a process that saves in a loop, some milliseconds after its first save. */
async function killedSave(bundle: string, path: string, afterMs: number): Promise<void> {
	const child = spawn(process.execPath, [bundle, path], {stdio: ['ignore', 'pipe', 'ignore']});
	await new Promise(saved => child.stdout.once('data', saved));
	await new Promise(over => setTimeout(over, afterMs));
	const ended = new Promise(over => child.once('close', over));
	child.kill('SIGKILL');
	await ended;
}

test('what killed saves leave beside a profile is gone an hour later, when it is opened; the profile is whole', async () => {
	const folder = temporaryFolder();
	const profiles = join(folder, 'profiles');
	await runProgram(['new', '--profiles', profiles, '--name', 'Den', '--layout', '5.1', '--unit', 'm'], {
		folder,
	});
	const path = join(profiles, 'den.json');
	const bundle = (await saverBundle(folder)) as string;
	const left = () => readdirSync(profiles).filter(name => !isProfile(name));
	const isLitter = (name: string) => name.endsWith('.tmp');
	for (let kill = 0; kill < mostKills && !left().some(isLitter); kill++) await killedSave(bundle, path, kill);
	expect(left().some(isLitter)).toBe(true);

	const open = async () => {
		const terminal = openTerminal(['--profiles', 'profiles', 'walk', 'den'], {folder});
		await terminal.waitFor('[Tape 0/');
		terminal.press('interrupt');
		await terminal.ended;
	};
	// Just now another process might still be saving.
	await open();
	expect(left().some(isLitter)).toBe(true);
	const twoHoursAgo = new Date(Date.now() - 7_200_000);
	for (const name of left()) utimesSync(join(profiles, name), twoHoursAgo, twoHoursAgo);
	await open();
	expect(left()).toEqual([]);
	expect(readdirSync(profiles).filter(isProfile)).toContain('den.json');
	expect((await runProgram(['check', path, '--json'], {folder})).code).not.toBe(2);
});
