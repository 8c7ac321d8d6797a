import {expect, test} from 'vitest';
import {type Press, pressesOf} from '../../../source/ui/keys/press.ts';
import {dayOf} from '../../../source/ui/screens/day.ts';
import {draftRound} from '../../../source/ui/screens/draft.ts';
import {openHome} from '../../../source/ui/screens/home.ts';
import {listLines} from '../../../source/ui/screens/homeView.tsx';
import {pressAll} from '../../../source/ui/screens/press.ts';
import type {AppScreen, HomeScreen, World} from '../../../source/ui/screens/screen.ts';
import {memoryFiles} from '../memoryFiles.ts';
import {den} from '../rooms.ts';

function worldOf(files: ReturnType<typeof memoryFiles>): World {
	return {files, now: () => new Date(2026, 3, 18, 23, 30)};
}

const enter: Press = {key: 'enter'};
const down: Press = {key: 'down'};

function press(world: World, screen: AppScreen, ...presses: readonly (Press | string)[]): AppScreen {
	return presses.reduce<AppScreen>(
		(now, one) => pressAll(now, typeof one === 'string' ? pressesOf(one, {}) : [one], world),
		screen,
	);
}

const demo = den({name: 'Demo', date: '2025-01-01'});

test('an empty folder starts at “New profile”, and Enter begins one', () => {
	const world = worldOf(memoryFiles());
	expect(press(world, openHome(world), enter).kind).toBe('create');
});

test('the list is in the order given, the newest of the user first', () => {
	const world = worldOf(memoryFiles({old: den({date: '2025-01-01'}), new: den()}));
	expect(openHome(world)).toMatchObject({cursor: 0, entries: [{file: 'new'}, {file: 'old'}]});
});

test('a new 5.1.2 is made from a name and four answers and its walk opens', () => {
	const files = memoryFiles();
	const world = worldOf(files);
	const screen = press(world, openHome(world), 'n', 'Den', enter, '6', enter, enter, '1', enter, '3', enter);
	expect(screen).toMatchObject({kind: 'walk', state: {promptId: 'tape:FL:seat1'}});
	expect(files.kept.get('den')).toMatchObject({
		name: 'Den',
		date: '2026-04-18',
		lengthUnit: 'ft-in',
		receiver: {timing: {kind: 'distance', shownIn: 'ft'}},
	});
});

test('on the question for a name letters are text, and Esc comes before a command', () => {
	const world = worldOf(memoryFiles());
	const named = press(world, openHome(world), 'n', 'q', 'u', '?');
	expect(named).toMatchObject({kind: 'create', state: {typed: 'qu?'}});
	expect(press(world, named, {key: 'escape'}, 'q').kind).toBe('home');
});

test('an earlier answer to a new profile can be changed before the last one', () => {
	const files = memoryFiles();
	const world = worldOf(files);
	const up: Press = {key: 'up'};
	const screen = press(world, openHome(world), 'n', 'Den', enter, '6', enter, up, '5', enter, enter);
	press(world, screen, '3', enter, '1', enter);
	expect(files.kept.get('den')!.channels.map(({id}) => id)).toEqual(['FL', 'FR', 'FC', 'LFE1', 'LS', 'RS']);
});

test('a profile that comes with the program is copied, never changed', () => {
	const files = memoryFiles({demo}, ['demo']);
	const world = worldOf(files);
	const screen = press(world, openHome(world), enter, '9-4', enter);
	expect(screen).toMatchObject({kind: 'walk', file: 'demo-copy'});
	expect(files.kept.get('demo')).toEqual(demo);
	expect(files.kept.get('demo-copy')!.tape).toHaveLength(1);
});

test('starting from an older profile asks what has moved, and brings all the rest along with its day', () => {
	const older = den({
		name: 'Last year',
		date: '2025-04-18',
		tape: [
			{from: 'wall:left', to: 'wall:right', metres: 4.2},
			{from: 'FL', to: 'seat1', metres: 2.8},
		],
		meter: [{source: 'FL', seat: 'seat1', decibels: 74, weighting: 'C', round: 'first'}],
		settings: [{id: 'set1', origin: 'solved', channels: {FL: {trimDb: {stepped: 1}}}, dialledIn: ['FL']}],
		walk: {prompt: 'keep', skipped: ['room:width']},
	});
	const files = memoryFiles({older});
	const world = worldOf(files);
	press(world, openHome(world), 'f', 'This year', enter, 'front l', enter);
	expect(files.kept.get('this-year')).toMatchObject({
		name: 'This year',
		date: '2026-04-18',
		channels: older.channels,
		receiver: older.receiver,
		tape: [
			{from: 'wall:left', takenAt: '2025-04-18'},
			{from: 'FL', setAside: true},
		],
		meter: [{source: 'FL', setAside: true, takenAt: '2025-04-18'}],
		settings: [{id: 'set1'}, {origin: 'found', channels: {FL: {trimDb: {stepped: 1}}}}],
	});
	expect(files.kept.get('older')).toEqual(older);
});

test('two profiles are compared oldest first, whichever was marked first', () => {
	const world = worldOf(memoryFiles({new: den({name: 'New'}), old: den({name: 'Old', date: '2025-01-01'})}));
	const screen = press(world, openHome(world), 'c', 'c');
	expect(screen).toMatchObject({kind: 'compare', older: {name: 'Old'}, newer: {name: 'New'}});
	expect(press(world, openHome(world), down, 'c', 'c')).toMatchObject({older: {name: 'Old'}});
	expect(press(world, screen, 'q').kind).toBe('home');
});

test('the first c goes on to the next profile of the same room, and stays where there is none', () => {
	const world = worldOf(
		memoryFiles({
			new: den({name: 'New', date: '2026-03-01', room: {name: 'Den'}}),
			other: den({name: 'Other', date: '2026-02-01', room: {name: 'Attic'}}),
			old: den({name: 'Old', date: '2026-01-01', room: {name: 'den '}}),
		}),
	);
	const marked = press(world, openHome(world), 'c') as HomeScreen;
	expect(marked.entries[marked.cursor]).toMatchObject({name: 'Old'});
	expect(marked.notes[0]!.text).toContain('Old, of the same room');
	expect(press(world, openHome(world), down, 'c')).toMatchObject({cursor: 1, marked: 'other'});
});

test('the first c passes over a copy of the same day where the room has another day', () => {
	const world = worldOf(
		memoryFiles({
			copy: den({date: '2026-01-01'}),
			same: den({date: '2026-01-01'}),
			old: den({name: 'Old', date: '2025-01-01'}),
		}),
	);
	const marked = press(world, openHome(world), 'c') as HomeScreen;
	expect(marked.entries[marked.cursor]).toMatchObject({name: 'Old'});
});

test('a profile that cannot be read is said to be so and nothing opens', () => {
	const files = memoryFiles({den: den()});
	const world = worldOf(files);
	const home = openHome(world);
	files.kept.delete('den');
	expect(press(world, home, enter)).toMatchObject({
		kind: 'home',
		notes: [{kind: 'no', text: 'den cannot be read.'}],
	});
	expect(press(world, home, 'f')).toMatchObject({kind: 'home', notes: [{kind: 'no'}]});
});

test('q leaves', () => {
	const world = worldOf(memoryFiles());
	expect(press(world, openHome(world), 'q').kind).toBe('left');
});

test('`listLines` keeps the chosen line in view and counts what is outside', () => {
	const entries = Array.from({length: 40}, (_, index) => ({
		file: `f${index}`,
		name: `Profile ${index}`,
		date: '2026-04-18',
		isShipped: false,
	}));
	const home: HomeScreen = {kind: 'home', entries, cursor: 30, notes: [], isHelpShown: false};
	const texts = listLines(home, 60, 10).map(({text}) => text);
	expect(texts).toHaveLength(10);
	expect(texts.some(text => text.includes('› 2026-04-18  Profile 30'))).toBe(true);
	expect(texts.at(-1)).toMatch(/26 above, 6 below/);
});

test('`dayOf` is the day where the user sits, not the one in Greenwich', () => {
	expect(dayOf(new Date(2026, 0, 5, 23, 59))).toBe('2026-01-05');
});

test('Enter alone takes the offered name, and a layout may be typed as it reads', () => {
	const files = memoryFiles();
	const world = worldOf(files);
	press(world, openHome(world), 'n', enter, '5.1.2', enter, enter, '1', enter, '3', enter);
	const [made] = [...files.kept.values()];
	expect(made!.name).toBe('Home cinema');
	expect(made!.channels.map(({id}) => id)).toContain('TpSiL');
});

test('Esc closes the help of the home screen', () => {
	const world = worldOf(memoryFiles());
	const helped = press(world, openHome(world), '?');
	expect(helped).toMatchObject({isHelpShown: true});
	expect(press(world, helped, {key: 'escape'})).toMatchObject({isHelpShown: false});
});

test.each([
	['Cellar 2025', '2025-10-04', 'Cellar 2026'],
	['Cellar', '2025-10-04', 'Cellar, 2026'],
	['Cellar 2026', '2026-02-01', 'Cellar 2026, 2026-04-18'],
])('a round from %s of %s is offered a name of its own', (name, date, offered) => {
	const world = worldOf(memoryFiles({old: den({name, date})}));
	const screen = press(world, openHome(world), 'f');
	if (screen.kind !== 'create') throw new Error('f asked nothing');
	expect(draftRound.prompts(screen.state.subject)[0]!.usualText).toBe(offered);
});
