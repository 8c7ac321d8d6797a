import {readdirSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {parseProfile} from '../../source/profile/file/parse.ts';
import {runProgram, temporaryFolder} from './harness/program.ts';
import {type OpenTerminal, openTerminal} from './harness/terminal.ts';

/** The app in a folder of its own; profiles lie in `profiles` there. */
function open(folder: string, size: {readonly columns?: number; readonly rows?: number} = {}): OpenTerminal {
	return openTerminal(['--profiles', 'profiles'], {folder, ...size});
}

/** The one profile of a folder, as it is on disk. */
function onDisk(folder: string) {
	const [name] = readdirSync(join(folder, 'profiles')).filter(
		file => file.endsWith('.json') && !file.endsWith('.previous.json'),
	);
	const path = join(folder, 'profiles', name!);
	const parsed = parseProfile(readFileSync(path), path);
	if (!parsed.ok) throw new Error(`${path} does not parse.`);
	return {path, profile: parsed.profile};
}

/** Types an answer and waits for what shows that it was taken. */
async function answer(terminal: OpenTerminal, text: string, then: string | RegExp): Promise<void> {
	terminal.type(text);
	terminal.press('enter');
	await terminal.waitFor(then);
}

/** From the empty home to the first distance of a 7.1 in feet and inches. */
async function beginDen(terminal: OpenTerminal): Promise<void> {
	await terminal.waitFor('New profile');
	terminal.type('n');
	await terminal.waitFor('A name for this arrangement');
	await answer(terminal, 'Den', 'Which speakers?');
	await answer(terminal, '8', 'What does the tape show?');
	await answer(terminal, '1', 'How does the receiver take distances?');
	await answer(terminal, '3', '[Tape 0/8]');
}

const distances = ['9\' 4 1/2"', '9-5', "9'4.5", '6ft 1in', '7-2', '7′ 2″', '6-1', '11-3'];
const levels = ['74.2', '73.1', '74,9', '75.3', '74.8', '72.2', '71.9', '78.3'];

test('a 7.1 in feet and inches goes from an empty folder to settings, killed midway and resumed at the very prompt', async () => {
	const folder = temporaryFolder();
	const first = open(folder);
	await beginDen(first);
	for (const [index, text] of distances.slice(0, 5).entries())
		await answer(first, text, `[Tape ${index + 1}/8]`);
	await first.waitFor('Back left to Reference seat');
	first.type('7-'); // characters being typed may be lost
	await first.waitFor(/▀▀▀|7-/);
	first.kill('SIGKILL');
	await first.ended;
	expect(onDisk(folder).profile.tape).toHaveLength(5);

	const second = open(folder);
	await second.waitFor(/› .*Den/);
	second.press('enter');
	await second.waitFor('Back left to Reference seat');
	for (const [index, text] of distances.slice(5).entries()) {
		await answer(second, text, index < 2 ? `[Tape ${index + 6}/8]` : 'anything in a line that is late');
	}

	await answer(second, '', 'Tape to the walls too?');
	await answer(second, '', 'Where does the noise come from?');
	await answer(second, '', 'How do the trims stand?');

	await answer(second, '', 'Front left at Reference seat');
	for (const [index, text] of levels.entries()) {
		await answer(second, text, index < 7 ? `[Meter ${index + 2}/9]` : /\[Dial-in/);
	}

	second.press('escape');
	second.type('q');
	await second.waitFor('newest first');
	second.type('q');
	expect((await second.ended).code).toBe(0);

	const {profile, path} = onDisk(folder);
	expect(profile.tape).toHaveLength(8);
	expect(profile.meter!.map(({decibels}) => decibels)).toEqual([
		74.2, 73.1, 74.9, 75.3, 74.8, 72.2, 71.9, 78.3,
	]);
	const solved = await runProgram(['solve', path, '--json']);
	const channels = JSON.parse(solved.stdout).channels as Array<{id: string; timing: {stepped: number}}>;
	// 9 ft 4 1/2 in is 2.8575 m by the foot of 0.3048 m, exact; the receiver takes tenths of a foot.
	const frontLeft = channels.find(({id}) => id === 'FL')!;
	expect(frontLeft.timing.stepped / 0.03048).toBeCloseTo(Math.round(frontLeft.timing.stepped / 0.03048), 6);
});

test('a terminal that is resized from 80×24 to 60×16, 40×10 and 160×45 shows whole screens', async () => {
	const folder = temporaryFolder();
	const terminal = open(folder);
	await beginDen(terminal);
	terminal.resize(60, 16);
	await terminal.waitUntil(
		screen => screen.split('\n').every(line => line.length <= 60),
		'lines of 60 cells',
	);
	await terminal.waitFor('Front left to Reference seat');
	terminal.resize(40, 10);
	await terminal.waitFor('Hidden:');
	terminal.resize(160, 45);
	await terminal.waitFor(/Front left to Reference seat.*channel|channel.*remark/);
	await answer(terminal, '9-4', '[Tape 1/8]');
	expect(terminal.screen()).toContain('Front centre to Reference seat');
});

test.each([
	['Ctrl-C', (terminal: OpenTerminal) => terminal.press('interrupt')],
	['Ctrl-\\', (terminal: OpenTerminal) => terminal.type('\u001c')],
	['SIGTERM', (terminal: OpenTerminal) => terminal.kill('SIGTERM')],
	['SIGHUP', (terminal: OpenTerminal) => terminal.kill('SIGHUP')],
])('%s ends with 130, gives the terminal back and loses nothing', async (_, interrupt) => {
	const folder = temporaryFolder();
	const terminal = open(folder);
	await beginDen(terminal);
	await answer(terminal, '9-4', '[Tape 1/8]');
	interrupt(terminal);
	expect((await terminal.ended).code).toBe(130);
	// The cursor is shown again.
	expect(terminal.written().lastIndexOf('\u001b[?25h')).toBeGreaterThan(
		terminal.written().lastIndexOf('\u001b[?25l'),
	);
	expect(onDisk(folder).profile).toMatchObject({tape: [{from: 'FL'}], walk: {prompt: 'tape:FC:seat1'}});
});

test('a window that is closed loses nothing, and the next one finds no lock', async () => {
	const folder = temporaryFolder();
	const terminal = open(folder);
	await beginDen(terminal);
	await answer(terminal, '9-4', '[Tape 1/8]');
	const locks = () => readdirSync(join(folder, 'profiles')).filter(file => file.endsWith('.lock'));
	expect(locks()).toHaveLength(1);
	terminal.close();
	await expect.poll(locks, {timeout: 10_000}).toEqual([]);
	expect(onDisk(folder).profile).toMatchObject({tape: [{from: 'FL'}]});
});

test('a file that another program changes meanwhile is not overwritten, and the answer can go to a new file', async () => {
	const folder = temporaryFolder();
	const one = open(folder);
	await beginDen(one);
	const other = open(folder);
	await other.waitFor(/› .*Den/);
	other.press('enter');
	await other.waitFor(/is open in another\s+roomtare/);
	other.type('2');
	other.press('enter');
	// The head shows the stop before the choice is made; only the question shows that it was.
	await other.waitFor('From the ear');
	await answer(other, '10-1', '[Tape 1/8]');
	await answer(one, '9-4', 'Not saved');
	expect(onDisk(folder).profile.tape!.map(({metres}) => Math.round(metres * 1000))).toEqual([3073]);
	one.type('1');
	one.press('enter');
	await one.waitFor('· Kept in ');
	const profiles = readdirSync(join(folder, 'profiles')).filter(
		file => file.endsWith('.json') && !file.endsWith('.previous.json'),
	);
	expect(profiles).toHaveLength(2);
});

test('a second app is told who has a profile open; what a killed one leaves is no hindrance', async () => {
	const folder = temporaryFolder();
	const one = open(folder);
	await beginDen(one);
	const second = open(folder);
	await second.waitFor(/› .*Den/);
	second.press('enter');
	await second.waitFor(`process ${one.processId}`);
	second.type('1');
	second.press('enter');
	await second.waitFor('newest first');
	one.kill('SIGKILL');
	await one.ended;
	second.press('enter');
	await second.waitFor('[Tape 0/8]');
	await answer(second, '9-4', '[Tape 1/8]');
	second.type('q');
	await second.waitFor('newest first');
	second.type('q');
	expect((await second.ended).code).toBe(0);
	expect(readdirSync(join(folder, 'profiles')).filter(file => file.endsWith('.lock'))).toEqual([]);
});

test('a demo that is opened again without an answer goes on in the same copy', async () => {
	const folder = temporaryFolder();
	for (const _ of [1, 2]) {
		const terminal = openTerminal(['--profiles', 'profiles', 'walk', 'cellar-2026'], {folder});
		// Everything is typed in and proved: it opens where the page is, and this year against last.
		await terminal.waitFor('[Keep');
		terminal.press('interrupt');
		await terminal.ended;
	}

	// The place in the walk is kept, and so the version before; neither makes it another copy.
	const files = readdirSync(join(folder, 'profiles'));
	expect(
		files.filter(file => /^cellar-2026.*\.json$/.test(file) && !file.endsWith('.previous.json')),
	).toEqual(['cellar-2026.json']);
	expect(files.filter(file => file.endsWith('.lock'))).toEqual([]);
});

test('without colour no escape code sets one, and the words still tell', async () => {
	const folder = temporaryFolder();
	const terminal = openTerminal(['--profiles', 'profiles'], {folder, env: {NO_COLOR: '1'}});
	await beginDen(terminal);
	await answer(terminal, 'abc', '! There is no number');
	expect(terminal.written()).not.toMatch(/\u001b\[(?:[0-9;]*;)?[349][0-7]m/);
});

test('from last year’s room to this year’s page for the cabinet door without leaving the app, and nothing is overwritten', async () => {
	const folder = temporaryFolder();
	const terminal = open(folder);
	await terminal.waitFor(/› .*Cellar 2026/);
	terminal.type('f');
	await terminal.waitFor('A name for this arrangement');
	await answer(terminal, 'Cellar anew', 'What has moved or is new?');
	await answer(terminal, 'all', '[Tape 0/');
	terminal.type('W');
	await terminal.waitFor('cables laid');
	terminal.type('W');
	await terminal.waitFor('[Tape 0/');
	for (const stop of ['Meter', 'Dial-in', 'Bass', 'Proof', 'Keep']) {
		terminal.type(']');
		await terminal.waitFor(`[${stop}`);
	}

	await terminal.waitFor('Next: Tape');
	terminal.type('w');
	await terminal.waitFor('Written: ');
	terminal.type('w');
	await terminal.waitFor(/-door-2\.html/);
	terminal.type('l');
	await terminal.waitFor(/-labels\.html/);
	const written = readdirSync(join(folder, 'profiles')).filter(file => !/json|lock/.test(file));
	expect(written.map(file => file.replace(/^.*-(?=door|labels)/, '')).toSorted()).toEqual([
		'door-2.html',
		'door-2.txt',
		'door.html',
		'door.txt',
		'labels.html',
		'labels.txt',
	]);
	terminal.type('c');
	await terminal.waitFor(/→ Cellar anew/);
	terminal.type('q');
	await terminal.waitFor('[Keep');
	terminal.type('q');
	await terminal.waitFor('newest first');
	terminal.type('q');
	expect((await terminal.ended).code).toBe(0);
});
