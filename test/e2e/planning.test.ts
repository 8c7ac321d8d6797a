import {mkdirSync, readdirSync, readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {parseProfile} from '../../source/profile/file/parse.ts';
import {runProgram, temporaryFolder} from './harness/program.ts';
import {openTerminal} from './harness/terminal.ts';

const nameIn = (folder: string): string =>
	readdirSync(folder).find(one => one.startsWith('planned-room') && /\d\.json$/.test(one))!;

function onlyProfile(folder: string) {
	const path = join(folder, nameIn(folder));
	const parsed = parseProfile(readFileSync(path), path);
	if (!parsed.ok) throw new Error(`${path} does not parse.`);
	return parsed.profile;
}

test('a sloped room is typed, searched by the worker, chosen and staked out; the next start goes on there', async () => {
	const folder = temporaryFolder();
	const profiles = join(folder, 'profiles');
	mkdirSync(profiles);
	const terminal = openTerminal(['--profiles', 'profiles'], {folder});
	await terminal.waitFor('New profile');
	terminal.press('end');
	await terminal.waitFor('› New profile');
	terminal.type('p');
	await terminal.waitFor('How wide is the room?');
	terminal.type('0');
	terminal.press('enter');
	await terminal.waitFor('no room is that size');
	for (const [typed, next] of [
		['4.1m', 'How long is it?'],
		['5.3m', 'How high is it?'],
		['2.6m/1.8m', 'How far is the seat'],
		['3.4m', 'as it stands'],
	] as const) {
		terminal.press('backspace');
		terminal.type(typed);
		terminal.press('enter');
		await terminal.waitFor(next, 20_000);
	}

	expect(terminal.screen()).toContain('ceiling 2.60 m to 1.80 m');
	terminal.type('rsubs 2');
	terminal.press('enter');
	await terminal.waitFor('sub B');
	// An arrow moves a sub, with its bass beside it.
	terminal.type('m1');
	terminal.press('enter', 'right', 'right');
	await terminal.waitFor('0.45 m from the left wall');
	terminal.press('escape');
	await terminal.waitFor('s search');
	// Keys typed at once while it searches are all taken, in order.
	terminal.type('s');
	await terminal.waitFor('Searching', 20_000);
	terminal.type('vvv');
	await terminal.waitFor(/a [⠤-]+ as it stands/u, 20_000);
	terminal.type('v');
	await terminal.waitFor('the screen on the', 60_000);
	await terminal.waitUntil(screen => !screen.includes('Searching'), 'the end of the search', 60_000);
	const ladder = terminal.lines();
	expect(ladder.find(line => line.startsWith(' ›'))).toMatch(/(one|two|three):/);
	terminal.type('l');
	await terminal.waitFor('Mark the places on the floor first');
	terminal.press('enter');
	await terminal.waitFor('Who is at hand?', 20_000);
	terminal.type('2');
	terminal.press('enter');
	await terminal.waitFor('Cross A, Reference seat: 2.05 m from the left wall');
	terminal.press('enter');
	await terminal.waitFor('Cross B');
	expect(onlyProfile(profiles).planned!.withinMetres).toBe(0.08);
	terminal.kill('SIGKILL');
	await terminal.ended;

	const again = openTerminal(['walk', join('profiles', nameIn(profiles))], {folder});
	await again.waitFor('Cross B', 20_000);
	again.press('interrupt');
	expect((await again.ended).code).toBe(130);
});

test.each([
	[{widthMetres: 0.4}, 'width'],
	[{widthMetres: 900}, 'width'],
	[{ceiling: {kind: 'flat', heightMetres: 0.9}}, 'height'],
	[{missingCorner: {corner: 'backLeft', widthMetres: 5, lengthMetres: 1}}, 'missing corner'],
	[{features: [{on: 'wall:left', kind: 'door', fromMetres: 4, toMetres: 9}]}, 'beyond its wall'],
	[
		{
			features: [{on: 'floor', kind: 'walkway', leftMetres: 0, rightMetres: 4, nearMetres: 0, farMetres: 5}],
		},
		'no wall is free',
	],
	[
		{ceiling: {kind: 'sloped', between: 'wall:front-wall:back', heightsMetres: [2.4, 0.2]}},
		'outside the walls or above the ceiling',
	],
])('arrange says what is wrong with a room of %j', async (change, said) => {
	const folder = temporaryFolder();
	const made = await runProgram(['new', '--name', 'Den', '--seats', '2', '--profiles', '.'], {
		folder,
	});
	expect(made.code).toBe(0);
	const file = join(folder, readdirSync(folder).find(name => name.endsWith('.json'))!);
	const profile = JSON.parse(readFileSync(file, 'utf8'));
	const room = {...profile.room, widthMetres: 4, lengthMetres: 5, ceiling: {kind: 'flat', heightMetres: 2.4}};
	writeFileSync(file, JSON.stringify({...profile, room: {...room, ...change}}));
	const {code, stdout, stderr} = await runProgram(['arrange', file, '--search'], {folder});
	expect(`${stdout} ${stderr}`.replace(/\s+/g, ' ').toLowerCase()).toContain(said);
	expect(code === 0 || code === 1).toBe(true);
	expect(stderr).not.toMatch(/\bat \S+:\d+/);
});
