import {expect, test, vi} from 'vitest';
import {cellWidth} from '../../source/report/fitCells.ts';
import {App} from '../../source/ui/app.tsx';
import {type Session, startSession} from '../../source/ui/session.ts';
import {drawIn} from './fakeTerminal.ts';
import {memoryFiles} from './memoryFiles.ts';
import {den} from './rooms.ts';

const enter = '\r';
const up = '\u001b[A';
const down = '\u001b[B';

function begin(
	profiles = {den: den()} as Parameters<typeof memoryFiles>[0],
	file: string | undefined = 'den',
) {
	const files = memoryFiles(profiles);
	const session = startSession({files, now: () => new Date('2026-04-18T20:00:00Z')}, file);
	return {files, session};
}

function open(columns = 80, rows = 24, started: {readonly session: Session} = begin()) {
	return drawIn(columns, rows, <App session={started.session} />);
}

test('the walk shows one question with its unit, the stops, the table and the keys', () => {
	const frame = open().frame();
	expect(frame).toContain('Front left to Reference seat');
	expect(frame).toContain('feet and inches');
	expect(frame).toContain('[Tape 0/8]');
	// Enter alone would be refused: the answer is needed.
	expect(frame).not.toContain('Enter next');
	expect(frame).toContain('s later');
	expect(frame).toContain('q leave');
	expect(frame).toMatch(/› Front left/);
});

test('Enter takes the value, says how it was read and moves on', async () => {
	const app = open();
	app.press('9-4 1/2');
	app.press(enter);
	await vi.waitFor(() => expect(app.frame()).toContain('Front centre to Reference seat'));
	expect(app.frame()).toContain('✓ Front left to Reference seat: 9′ 4 1/2″');
	expect(app.frame()).toContain('[Tape 1/8]');
});

test('a value that stands is shown beside the question', async () => {
	const app = open();
	app.press('9-4\r');
	app.press(up);
	await vi.waitFor(() => expect(app.frame()).toContain('so far 9′ 4″'));
});

test('five arrows in one burst are five steps', async () => {
	const app = open();
	app.press(down.repeat(5));
	await vi.waitFor(() => expect(app.frame()).toContain('Top side right to Reference seat'));
});

test('`?` explains in a line and with a drawing, and the next key takes it away', async () => {
	const app = open();
	app.press('?');
	await vi.waitFor(() => expect(app.frame()).toContain('straight line that the sound takes'));
	expect(app.frame()).toContain('ear');
	app.press('9');
	await vi.waitFor(() => expect(app.frame()).not.toContain('straight line that the sound takes'));
});

test('the ladder caution stands with an overhead distance, the one for ears where noise goes on', () => {
	const overhead = begin({den: den({walk: {prompt: 'tape:TpSiL:seat1'}})});
	expect(open(80, 24, overhead).frame()).toContain('▲ Ladder:');
	const noise = begin({den: den({walk: {prompt: 'meter:FL:seat1'}})});
	expect(open(80, 24, noise).frame()).toContain('▲ Ears:');
});

test('a trim that a reading moved by a step is told by a word', async () => {
	const started = begin({den: den({walk: {prompt: 'meter:start'}})});
	const app = open(80, 24, started);
	app.press(enter);
	app.press('74.2\r');
	app.press('73.6\r');
	await vi.waitFor(() => expect(app.frame()).toMatch(/was [+−]\d/));
});

test.each([
	[80, 24],
	[60, 16],
	[126, 30],
	[160, 45],
	[200, 60],
	[59, 24],
	[80, 15],
	[40, 10],
	[20, 5],
	[9, 3],
])('a frame in %i×%i stays within the terminal, one row short of its height', (columns, rows) => {
	const lines = open(columns, rows).lines();
	expect(lines.length).toBeLessThanOrEqual(rows - 1);
	for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(columns);
});

test.each([
	[80, 24],
	[40, 10],
	[20, 4],
])('home and the questions for a new profile stay within %i×%i too', async (columns, rows) => {
	const app = drawIn(
		columns,
		rows,
		<App session={startSession({files: memoryFiles(), now: () => new Date()})} />,
	);
	const isWithin = () => {
		expect(app.lines().length).toBeLessThanOrEqual(rows - 1);
		for (const line of app.lines()) expect(cellWidth(line)).toBeLessThanOrEqual(columns);
	};

	isWithin();
	app.press('n');
	await vi.waitFor(() => expect(app.frame()).toContain('A name for'));
	isWithin();
	app.press('Den\r');
	await vi.waitFor(() => expect(app.frame()).toContain('Which speak'));
	isWithin();
});

test.each([
	[59, 24],
	[80, 15],
])('in %i×%i one line says what is hidden, and the question still stands', (columns, rows) => {
	const frame = open(columns, rows).frame();
	expect(frame).toContain('Hidden:');
	expect(frame).toContain('Front left to Reference seat');
});

test('the table stands beside the question in a wide terminal and under it in a narrow one', () => {
	const wide = open(160, 45)
		.lines()
		.findIndex(line => line.includes('Front left to Reference seat'));
	const beside = open(160, 45).lines()[wide]!;
	expect(beside).toMatch(/Front left to Reference seat.*(channel|Front)/);
	const under = open(80, 24).lines();
	expect(under[wide]).not.toMatch(/channel/);
});

test('a resize is followed at once, down to the smallest and back', async () => {
	const app = open();
	app.resize(40, 10);
	await vi.waitFor(() => expect(app.frame()).toContain('Hidden:'));
	app.resize(160, 45);
	await vi.waitFor(() => expect(app.frame()).not.toContain('Hidden: table'));
	expect(app.lines().length).toBeLessThanOrEqual(44);
});

test('a terminal that tells no size counts as 80×24', () => {
	const lines = open(0, 0).lines();
	expect(lines.length).toBe(23);
	expect(Math.max(...lines.map(line => cellWidth(line)))).toBeLessThanOrEqual(80);
});

test('Ctrl-C keeps the place, and the session knows that it was interrupted', async () => {
	const started = begin();
	const app = open(80, 24, started);
	app.press('9-4\r');
	app.press(down);
	app.press('\u0003');
	await app.ended;
	expect(started.session.wasInterrupted()).toBe(true);
	expect(started.files.kept.get('den')).toMatchObject({
		tape: [{from: 'FL'}],
		walk: {prompt: 'tape:FR:seat1'},
	});
});

test('the place of the walk is written when the keys rest', async () => {
	const started = begin();
	const app = open(80, 24, started);
	app.press(down);
	await vi.waitFor(() => expect(started.files.kept.get('den')!.walk?.prompt).toBe('tape:FC:seat1'));
});

test('home lists profiles by date and marks what comes with the program', () => {
	const files = memoryFiles({den: den(), demo: den({name: 'Attic', date: '2025-04-12'})}, ['demo']);
	const session = startSession({files, now: () => new Date()});
	const frame = drawIn(80, 24, <App session={session} />).frame();
	expect(frame).toMatch(/› 2026-04-18 {2}Den/);
	expect(frame).toMatch(/2025-04-12 {2}Attic {3}demo/);
	expect(frame).toContain('New profile');
});

test('two profiles are compared on one screen that scrolls', async () => {
	const tape = [{from: 'FL', to: 'seat1', metres: 2.8}];
	const files = memoryFiles({
		old: den({name: 'Old', date: '2025-04-18', tape}),
		new: den({name: 'New', tape: [{...tape[0]!, metres: 3.4}]}),
	});
	const session = startSession({files, now: () => new Date()});
	const app = drawIn(80, 24, <App session={session} />);
	app.press('c');
	await vi.waitFor(() => expect(app.frame()).toContain('c again compares it with Old'));
	app.press('c');
	await vi.waitFor(() => expect(app.frame()).toContain('Old (2025-04-18) → New (2026-04-18)'));
	expect(app.lines().length).toBeLessThanOrEqual(23);
});

test('a refused save is told in words with numbered ways out', async () => {
	const started = begin();
	started.files.refusals.push({why: 'failed', text: 'The disk is full.'});
	const app = open(80, 24, started);
	app.press('9-4\r');
	await vi.waitFor(() => expect(app.frame()).toContain('The disk is full.'));
	expect(app.frame()).toContain('Your answers are still here');
	expect(app.frame()).toContain('1  Try again');
});

test('a screen reader gets the question, the stops in words and no drawing of lines', () => {
	const aloud = drawIn(80, 24, <App session={begin().session} />, true).frame();
	expect(aloud).toContain('Stop Tape. Open: Tape, 8 needed; Meter, 9 needed.');
	expect(aloud).toContain('Front left to Reference seat');
	expect(aloud).not.toMatch(/[─━┻┴▼]/);
});

test('`startSession` throws the words of the reader where the file cannot be read', () => {
	expect(() => begin({}, 'gone')).toThrow('gone cannot be read.');
});

test('`?` explains a page above it', async () => {
	const app = open(80, 24, begin({den: den({walk: {prompt: 'dialIn'}})}));
	app.press('?');
	await vi.waitFor(() => expect(app.frame()).toContain('· As the boxes show it'));
});
