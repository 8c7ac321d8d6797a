import {beforeAll, expect, test, vi} from 'vitest';
import {cellWidth} from '../../../source/report/fitCells.ts';
import {App} from '../../../source/ui/app.tsx';
import {type Session, startSession} from '../../../source/ui/session.ts';
import {eveningProfile, eveningWave} from '../../study/hearing/simulated/evening.ts';
import {drawIn} from '../fakeTerminal.ts';
import {memoryFiles} from '../memoryFiles.ts';
import {type MemoryRecordings, memoryRecordings, watched} from '../memoryRecordings.ts';

// A sub that is later than its distance says, and one playing with it turned: a phone's recording of both.
const late = {delayMs: {sub1: 4}};
let evening: Uint8Array;
beforeAll(() => {
	evening = eveningWave([late, {...late, sign: {sub1: -1}}]);
}, 240_000);

const enter = '\r';
const escapeKey = '\u001b';

type Opened = {
	readonly files: ReturnType<typeof memoryFiles>;
	readonly recordings: MemoryRecordings;
	readonly session: Session;
	readonly app: ReturnType<typeof drawIn>;
	readonly shows: (sought: string | RegExp) => Promise<void>;
};

function atBass(columns = 80, rows = 24): Opened {
	const files = memoryFiles({cellar: {...eveningProfile(), walk: {prompt: 'bass'}}});
	const recordings = memoryRecordings();
	const world = {files, recordings, now: () => new Date('2026-04-18T20:00:00Z')};
	const session = startSession(world, 'cellar');
	const app = drawIn(columns, rows, <App session={session} />);
	const shows = (sought: string | RegExp) =>
		vi.waitFor(() => expect(app.frame()).toMatch(sought), {timeout: 5000});
	return {files, recordings, session, app, shows};
}

/** To the page where recordings arrive. */
async function atArrivals(columns?: number, rows?: number): Promise<Opened> {
	const opened = atBass(columns, rows);
	opened.app.press(enter);
	await opened.shows('Play one file, record it at the seat');
	opened.app.press(enter);
	await opened.shows('Which recording?');
	return opened;
}

/** A recording that arrives is seen twice unchanged, and then heard. */
function arrives({recordings, session}: Opened, name = 'evening.wav', bytes = evening): void {
	recordings.arrive(name, bytes);
	session.look();
	session.look();
}

test('Bass offers a recording first, with its minutes and what it won, and the meter besides', async () => {
	const {app, shows} = atBass();
	await shows(/Enter +One file played, recorded at the seat: 2 playings, 1 change at a box/);
	expect(app.frame()).toMatch(/louder in \d+ %/);
	expect(app.frame()).toMatch(/m +With the meter/);
	app.press('m');
	await shows('Settings that stand in the boxes now');
});

test('the sheet tells the size, the playings, how to record and what may hurt, and writes the file', async () => {
	const {app, shows} = atBass(80, 40);
	app.press(enter);
	await shows(/› 1 +Front left and right/);
	expect(app.frame()).toContain('ears away from');
	expect(app.frame()).toContain('upmixing');
	app.press('3');
	await shows(/› 3/);
	app.press('w');
	await shows('Written to cellar-round/bass.wav');
});

test('what arrives is heard by itself, what lies there already is only shown', async () => {
	const opened = atBass();
	opened.recordings.arrive('old.wav', new Uint8Array(44));
	opened.app.press(enter);
	await opened.shows('Play one file');
	opened.app.press(enter);
	await opened.shows('old.wav');
	arrives(opened);
	await opened.shows('evening.wav: opening');
	expect(opened.recordings.orders.map(order => order.kind === 'hear' && order.path)).toEqual([
		`${watched}/evening.wav`,
	]);
});

test('a recording is heard while keys work, shown to be accepted, and in the profile only then', async () => {
	const opened = await atArrivals();
	const {app, shows, recordings, session, files} = opened;
	arrives(opened);
	let steps = 0;
	await recordings.work(() => {
		steps += 1;
		// Somebody looks around meanwhile: to the sheet and back.
		if (steps === 3) session.press([{key: 'enter'}]);
	});
	expect(steps).toBeGreaterThan(20);
	await shows('Is this what was recorded?');
	await shows(/2 +Reference seat +Subwoofer changed +−35 ppm/);
	expect(files.kept.get('cellar')!.recordings).toBeUndefined();
	app.press('\t');
	await shows(/Front left +0\.00 ms/);
	await shows(/Blend: \+\d/);
	app.press(enter);
	await shows('Recorded: +');
	const kept = files.kept.get('cellar')!;
	expect(kept.recordings).toHaveLength(2);
	expect(kept.recordings![1]!.state).toEqual({turned: ['sub1']});
	expect(kept.responses!.map(({source, part}) => `${source} ${part}`)).toEqual([
		'FL all',
		'FR all',
		'FL main',
		'FR main',
		'sub1 subs',
	]);
	// Undo takes all of it back.
	app.press('u');
	await vi.waitFor(() => expect(files.kept.get('cellar')!.recordings).toBeUndefined());
});

test('a playing set to spare is understood anew, and a line left out is not taken', async () => {
	const opened = await atArrivals();
	const {app, shows, recordings, files} = opened;
	arrives(opened);
	await recordings.work();
	await shows('Is this what was recorded?');
	app.press('\u001b[B');
	await shows(/› +2/);
	app.press('x');
	await vi.waitFor(() => expect(recordings.orders.at(-1)!.kind).toBe('understand'));
	await recordings.work();
	await shows(/› +2 +spare/);
	app.press('\t');
	await shows(/› +Front left/);
	app.press('x');
	// Who presses Enter before it is understood anew takes nothing that was to be left out.
	app.press(enter);
	await shows('One moment: not everything is heard yet.');
	await recordings.work();
	await shows(/› +Front left.*left out/);
	app.press(enter);
	await shows('were not told apart');
	const kept = files.kept.get('cellar')!;
	expect(kept.recordings).toHaveLength(1);
	expect(kept.responses!.map(({source}) => source)).toEqual(['FR']);
});

test('Esc stops hearing, and nothing was taken', async () => {
	const opened = await atArrivals();
	const {app, shows, recordings, files} = opened;
	arrives(opened);
	await shows('evening.wav: opening');
	app.press(escapeKey);
	await shows('Stopped. Nothing was taken.');
	expect(recordings.stops).toBe(1);
	app.press(escapeKey);
	await shows('Play one file');
	app.press(escapeKey);
	await shows('Do subs and speakers add up?');
	expect(files.kept.get('cellar')!.recordings).toBeUndefined();
});

test('hearing goes on in the walk, and is found again as it was left', async () => {
	const opened = await atArrivals();
	const {app, shows, recordings, session} = opened;
	arrives(opened);
	app.press(escapeKey.repeat(1));
	await shows('Stopped');
	arrives(opened, 'again.wav');
	await shows('again.wav: opening');
	// Tab leads nowhere yet; back to the sheet would stop it, so the walk is reached from the table.
	await recordings.work();
	await shows('Is this what was recorded?');
	app.press('q');
	await shows('Do subs and speakers add up?');
	expect(session.screen()).toMatchObject({kind: 'walk', hearing: {step: 'playings'}});
	app.press(enter);
	await shows('Is this what was recorded?');
});

test('a file that is no recording, and a path to nothing, are told in words', async () => {
	const opened = await atArrivals();
	const {app, shows, recordings} = opened;
	arrives(opened, 'notes.wav', new TextEncoder().encode('RIFF????WAVEfmt nothing of the kind in here'));
	await recordings.work();
	app.press('/nowhere/a.wav');
	await shows('Path  /nowhere/a.wav');
	app.press(enter);
	await shows('/nowhere/a.wav: nothing is there.');
});

test.each([40, 60, 80, 120])('every page keeps to its size at %i columns', async columns => {
	for (const rows of [8, 14, 24]) {
		const opened = await atArrivals(columns, rows);
		const fits = () => {
			const lines = opened.app.frame().split('\n');
			expect(lines.length).toBeLessThan(rows + 1);
			for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(columns);
		};
		fits();
		opened.app.press(escapeKey);
		await opened.shows('Play one file');
		fits();
	}
});
