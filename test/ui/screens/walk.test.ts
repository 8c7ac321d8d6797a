import {beforeEach, describe, expect, test} from 'vitest';
import {parseProfile} from '../../../source/profile/file/parse.ts';
import {type Press, pressesOf} from '../../../source/ui/keys/press.ts';
import {openWalk} from '../../../source/ui/screens/openWalk.ts';
import {keep, pressAll} from '../../../source/ui/screens/press.ts';
import type {AppScreen, WalkScreen, World} from '../../../source/ui/screens/screen.ts';
import {walkHead} from '../../../source/ui/screens/walkHead.ts';
import {type MemoryFiles, memoryFiles} from '../memoryFiles.ts';
import {den} from '../rooms.ts';

let files: MemoryFiles;
let world: World;
let screen: AppScreen;

const now = new Date('2026-04-18T20:00:00Z');
const enter: Press = {key: 'enter'};

beforeEach(() => {
	files = memoryFiles({den: den()});
	world = {files, now: () => now};
	screen = openWalk(world, 'den')!;
});

/** Types texts, each followed by Enter; names in brackets are keys. */
function type(...texts: readonly string[]): WalkScreen {
	for (const text of texts) screen = pressAll(screen, [...pressesOf(text, {}), enter], world);
	return walk();
}

function press(...presses: readonly (Press | string)[]): void {
	for (const one of presses)
		screen = pressAll(screen, typeof one === 'string' ? pressesOf(one, {}) : [one], world);
}

function walk(): WalkScreen {
	if (screen.kind !== 'walk') throw new Error(`The screen is ${screen.kind}.`);
	return screen;
}

const onDisk = () => files.kept.get('den')!;
const tapeValues = ['9-4', '9-2', '9-5', '6', '6-1', '7', '7-1', '11-2'];
/** Nothing late in a line, no walls, the receiver’s own noise. */
const noOffers = ['', '', ''];
const levels = ['74.2', '73.1', '74.9', '75.3', '74.8', '72.2', '71.9', '78.3'];

describe('the quick round of a 5.1.2', () => {
	test('takes eight distances, one Enter and eight levels, and ends at the settings', () => {
		expect(walk().state.promptId).toBe('tape:FL:seat1');
		type(...tapeValues, ...noOffers);
		expect(walk().state.promptId).toBe('meter:start');
		type('');
		type(...levels);
		// How low the speakers go moves the crossovers; one Enter passes it for all.
		expect(walk().state.promptId).toBe('dialIn:lowLimit:FL');
		type('');
		expect(walk().state.promptId).toBe('dialIn');
		expect(onDisk().tape).toHaveLength(8);
		expect(onDisk().meter).toHaveLength(8);
	});

	test('keeps metres, the time and the settings in force with each reading', () => {
		type(...tapeValues, ...noOffers, '', '74.2');
		// 9 ft 4 in by the international foot of 0.3048 m.
		expect(onDisk().tape![0]).toMatchObject({from: 'FL', to: 'seat1', takenAt: now.toISOString()});
		expect(onDisk().tape![0]!.metres).toBeCloseTo(2.8448, 10);
		expect(onDisk().meter![0]).toMatchObject({
			source: 'FL',
			decibels: 74.2,
			round: 'first',
			inForce: 'found',
		});
		expect(onDisk().settings![0]).toMatchObject({id: 'found', channels: {FL: {trimDb: {stepped: 0}}}});
	});

	test('walks once round the room, then overhead, then to the sub', () => {
		type(...tapeValues);
		expect(onDisk().tape!.map(({from}) => from)).toEqual([
			'FL',
			'FC',
			'FR',
			'RS',
			'LS',
			'TpSiR',
			'TpSiL',
			'sub1',
		]);
	});

	test('writes files that can be read again, with the place of the walk', () => {
		type(...tapeValues, ...noOffers, '', ...levels, '');
		press(enter);
		const parsed = parseProfile(JSON.stringify(onDisk()), 'den');
		expect(parsed).toMatchObject({ok: true, profile: {walk: {prompt: 'dialIn'}}});
	});
});

test('files to play are written beside the profile, and it is said where', () => {
	type(...tapeValues, '', '', '2');
	expect(walk().state.promptId).toBe('meter:start');
	expect(walk().state.notes.at(-1)!.text).toContain('/memory/den-signals');
	files.refusals.push({why: 'failed', text: 'The disk is full.'});
	press({key: 'up'});
	screen = pressAll(screen, [...pressesOf('2', {}), enter], world);
	expect(onDisk().walk?.answered).toContain('meter:sound:files');
});

test('what was put off is asked before anything is offered', () => {
	type('9-4');
	press('s');
	type('9-5', '6', '6-1', '7', '7-1', '11-2');
	expect(walk().state.promptId).toBe('tape:FC:seat1');
	type('9-2');
	expect(walk().state.promptId).toBe('tape:links');
});

describe('every answer is on disk before the next question', () => {
	test('a session that ends after any answer resumes at the very next prompt', () => {
		for (const value of [...tapeValues, '']) {
			type(value);
			const resumed = openWalk(world, 'den')!;
			expect(resumed.state.promptId).toBe(walk().state.promptId);
			expect(resumed.state.subject.tape).toEqual(walk().state.subject.tape);
		}
	});

	test('typed characters and moves save nothing at once', () => {
		press('9', '-', '4', {key: 'down'}, {key: 'up'});
		expect(files.saves).toBe(0);
	});

	test('a move is written when the keys rest', () => {
		press({key: 'down'});
		screen = keep(screen, world);
		expect(onDisk().walk?.prompt).toBe('tape:FC:seat1');
		screen = keep(screen, world);
		expect(files.saves).toBe(1);
	});

	test('undo is written too', () => {
		type('9-4');
		press('u');
		expect(onDisk().tape).toEqual([]);
		expect(walk().state.promptId).toBe('tape:FL:seat1');
	});

	test('q leaves for home with everything kept, and Enter there resumes', () => {
		type('9-4');
		press({key: 'down'}, 'q');
		expect(screen.kind).toBe('home');
		press(enter);
		expect(walk().state.promptId).toBe('tape:FR:seat1');
	});
});

describe('wrong things typed', () => {
	test('q with characters typed does not leave', () => {
		press('9', 'q');
		expect(walk().state).toMatchObject({typed: '9', notes: [{kind: 'note'}]});
	});

	test('7.42 dB is asked about, and the number of the answer takes it', () => {
		type(...tapeValues, ...noOffers, '', '7.42');
		expect(walk().state.asked?.question).toContain('74.2');
		type('1');
		expect(onDisk().meter![0]!.decibels).toBe(74.2);
	});

	test('a length that the room cannot hold is doubted once', () => {
		screen = openWalk(world, 'den')!;
		type('9-4', '9-2', '9-5');
		type('52 ft');
		expect(files.saves).toBe(3);
		expect(walk().state.notes[0]).toMatchObject({kind: 'doubt'});
		press(enter);
		expect(onDisk().tape).toHaveLength(4);
	});

	test('a repeat far from the first reading is doubted, a correction of it is not', () => {
		type('9-4');
		press('r');
		type('12-4');
		expect(walk().state.asked?.choices.map(({label}) => label)).toEqual([
			'Replace 9′ 4″',
			'Keep both, 9′ 4″ and 12′ 4″',
		]);
		press('u', 'e');
		type('12-4');
		expect(onDisk().tape!.map(({metres}) => Math.round(metres * 1000))).toEqual([3759]);
	});

	test('a doubtful repeat replaces the reading, or is kept beside it, by a plain choice', () => {
		const lengths = () => onDisk().tape!.map(({metres}) => Math.round(metres * 1000));
		type('9-4');
		press('r');
		type('12-4', '2');
		expect(lengths()).toEqual([2845, 3759]);
		press('u');
		type('12-4', '1');
		expect(lengths()).toEqual([3759]);
	});

	test('words and signs of all kinds are refused in words and change nothing', () => {
		for (const text of ['abc', '1e9', '-3', "9''4''", '9/0', 'NaN', '🙂', '9,4,5']) type(text);
		expect(files.saves).toBe(0);
		expect(walk().state.promptId).toBe('tape:FL:seat1');
		expect(walk().state.notes[0]?.kind).toBe('no');
	});
});

describe('pastes', () => {
	test('several lines answer several questions', () => {
		press('9-4\n9-2\n9-5\n');
		expect(onDisk().tape!.map(({from}) => from)).toEqual(['FL', 'FC', 'FR']);
	});

	test('lines after one that was refused are dropped', () => {
		press('9-4\nnonsense\n9-5\n6\n');
		expect(onDisk().tape).toHaveLength(1);
		expect(walk().state).toMatchObject({promptId: 'tape:FC:seat1', typed: 'nonsense'});
	});

	test('lines after one that is doubted do not confirm it', () => {
		press('9-4\n99 ft\n\n\n');
		expect(onDisk().tape).toHaveLength(1);
	});

	test('pasted words neither leave nor undo', () => {
		type('9-4');
		press('quit now');
		expect(screen.kind).toBe('walk');
		expect(onDisk().tape).toHaveLength(1);
	});

	test('a burst of one command key counts each press', () => {
		type('9-4', '9-2', '9-5');
		press('uu');
		expect(onDisk().tape).toHaveLength(1);
	});
});

describe('saves that are refused', () => {
	test('a full disk is told, the answer stays in memory, and trying again keeps it', () => {
		files.refusals.push({why: 'failed', text: 'The disk is full.'});
		type('9-4');
		expect(walk()).toMatchObject({isUnsaved: true, trouble: {why: 'failed', text: 'The disk is full.'}});
		expect(onDisk().tape).toEqual([]);
		press('1', enter);
		expect(walk()).toMatchObject({isUnsaved: false, trouble: undefined});
		expect(onDisk().tape).toHaveLength(1);
	});

	test('nothing else is taken until it is decided', () => {
		files.refusals.push({why: 'failed', text: 'The disk is full.'});
		type('9-4');
		press('9', '-', enter, 'q', {key: 'down'});
		expect(walk().trouble).toBeDefined();
	});

	test('digits that were meant for the next reading decide nothing, with or without Enter', () => {
		for (const [why, reading] of [
			['changed', '2'],
			['changed', '281'],
			['changed', '3.4'],
			['failed', '4'],
		] as const) {
			files.refusals.push({why, text: 'Refused.'});
			type('9-4');
			const refused = walk();
			press(...reading);
			expect(walk()).toMatchObject({file: 'den', isUnsaved: true, trouble: {why}});
			// Where the reading happens to be a number of the list, what gives something up asks once more.
			press(enter, ...'9-2', enter);
			expect(walk()).toMatchObject({file: 'den', isUnsaved: true, trouble: {why}});
			expect(walk().state.subject.tape).toEqual(refused.state.subject.tape);
			files.refusals.length = 0;
			screen = keep({...walk(), trouble: undefined, isUnsaved: false}, world);
		}
	});

	test('a refusal found while somebody types shows in the header, takes no key, and asks at the next Enter', () => {
		press({key: 'down'}, '9', '-');
		files.writeElsewhere('den', den({name: 'Theirs'}));
		screen = keep(screen, world);
		expect(walk()).toMatchObject({refusal: {why: 'changed'}, isUnsaved: false});
		expect(walkHead(walk(), 80, 'title')[0]!.after).toContain('CHANGED ELSEWHERE');
		screen = keep(screen, world);
		press('2');
		expect(walk().trouble).toBeUndefined();
		press(enter);
		expect(walk()).toMatchObject({trouble: {why: 'changed'}, isUnsaved: true});
		expect(walk().state.subject.tape).toHaveLength(1);
		expect(onDisk().name).toBe('Theirs');
	});

	test('going on really goes on: later refusals show in the header alone, and leaving asks', () => {
		const full = {why: 'failed', text: 'The disk is full.'} as const;
		files.refusals.push(full, full, full);
		type('9-4');
		press('3', enter);
		screen = keep(screen, world);
		expect(walk().trouble).toBeUndefined();
		type('9-2');
		expect(walk()).toMatchObject({isUnsaved: true, trouble: undefined});
		expect(walkHead(walk(), 80, 'title')[0]!.after).toContain('NOT ON DISK');
		press('q');
		expect(walk().trouble?.why).toBe('failed');
		press('1', enter);
		expect(onDisk().tape).toHaveLength(2);
	});

	test('what no profile can hold is not taken, and all else goes on', () => {
		files.refusals.push({why: 'unsound', text: 'Too far.'});
		type('9-4');
		expect(walk().isUnsaved).toBe(false);
		expect(walk().trouble).toBeUndefined();
		expect(walk().state.subject.tape).toEqual([]);
		expect(walk().state.notes[0]!.text).toContain('Too far.');
		type('9-4');
		expect(onDisk().tape).toHaveLength(1);
	});

	test('a mark left by a killed save can be broken', () => {
		files.refusals.push({why: 'busy', text: 'den is being saved in another roomtare.'});
		type('9-4');
		press('3', enter, 'y', enter);
		expect(walk()).toMatchObject({isUnsaved: false, trouble: undefined});
		expect(onDisk().tape).toHaveLength(1);
	});

	test('going on tries again with the next answer', () => {
		files.refusals.push({why: 'failed', text: 'The disk is full.'});
		type('9-4');
		press('3', enter);
		type('9-2');
		expect(onDisk().tape).toHaveLength(2);
		expect(walk().isUnsaved).toBe(false);
	});

	test('a file that another program changed is never overwritten silently', () => {
		const theirs = den({name: 'Theirs'});
		files.writeElsewhere('den', theirs);
		type('9-4');
		expect(walk().trouble?.why).toBe('changed');
		expect(onDisk().name).toBe('Theirs');
	});

	test('after such a change the answers can go to a new file', () => {
		files.writeElsewhere('den', den({name: 'Theirs'}));
		type('9-4');
		press('1', enter);
		expect(walk().file).not.toBe('den');
		expect(files.kept.get(walk().file)!.tape).toHaveLength(1);
		expect(onDisk().name).toBe('Theirs');
	});

	test('or over the other one, or give way to it', () => {
		files.writeElsewhere('den', den({name: 'Theirs'}));
		type('9-4');
		const undecided = screen;
		press('3', enter, 'y', enter);
		expect(walk().state.subject.name).toBe('Theirs');
		screen = undecided;
		press('2', enter, enter);
		expect(onDisk().name).toBe('Theirs');
		press('2', enter, 'y', enter);
		expect(onDisk()).toMatchObject({name: 'Den', tape: [{from: 'FL'}]});
		expect(files.kept.get('den.other')!.name).toBe('Theirs');
		expect(walk().state.notes[0]!.text).toContain('den.other');
	});
});

test('a value that a reading moved is known by the profile before it', () => {
	type(...tapeValues, ...noOffers, '', '74.2');
	expect(walk().previous?.meter).toEqual([]);
	expect(walk().state.subject.meter).toHaveLength(1);
	press({key: 'up'});
	expect(walk().previous?.meter).toEqual([]);
});
