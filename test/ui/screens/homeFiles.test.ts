import {expect, test} from 'vitest';
import {type Press, pressesOf} from '../../../source/ui/keys/press.ts';
import {openHome} from '../../../source/ui/screens/home.ts';
import {pressAll} from '../../../source/ui/screens/press.ts';
import type {AppScreen, HomeScreen, World} from '../../../source/ui/screens/screen.ts';
import {memoryFiles} from '../memoryFiles.ts';
import {den} from '../rooms.ts';

const enter: Press = {key: 'enter'};

function desk() {
	const files = memoryFiles(
		{
			den: den({name: 'Den', date: '2026-04-18'}),
			before: den({
				name: 'Den before',
				date: '2025-04-18',
				meter: [{source: 'FL', seat: 'seat1', decibels: 74, weighting: 'C', round: 'first'}],
			}),
			demo: den({name: 'Demo', date: '2024-01-01'}),
		},
		['demo'],
	);
	const world: World = {files, now: () => new Date('2026-04-18T20:00:00Z')};
	return {files, world, home: openHome(world) as AppScreen};
}

const press = (world: World, screen: AppScreen, ...keys: readonly (Press | string)[]) =>
	keys.reduce(
		(now: AppScreen, key) => pressAll(now, typeof key === 'string' ? pressesOf(key, {}) : [key], world),
		screen,
	);
const names = (screen: AppScreen) => (screen as HomeScreen).entries.map(({name}) => name);

test('d takes a profile out of the list, says where it went, and u brings it back', () => {
	const {files, world, home} = desk();
	const without = press(world, home, 'd');
	expect(names(without)).toEqual(['Den before', 'Demo']);
	expect((without as HomeScreen).notes[0]!.text).toMatch(/moved to .*deleted.*u brings it back/);
	expect(files.kept.has('den')).toBe(false);
	expect(names(press(world, without, 'u'))).toEqual(['Den', 'Den before', 'Demo']);
});

test('any other key forgets what u would bring back, never the file', () => {
	const {world, home} = desk();
	const later = press(world, home, 'd', {key: 'down'}, 'u');
	expect(names(later)).toEqual(['Den before', 'Demo']);
});

test('a profile that comes with the program is neither deleted nor renamed', () => {
	const {files, world, home} = desk();
	for (const key of ['d', 'r']) {
		const after = press(world, home, {key: 'down'}, {key: 'down'}, key, 'x', enter);
		expect(after.kind === 'home' ? names(after) : []).not.toEqual(['Den', 'Den before']);
		expect(files.kept.get('demo')!.name).toBe('Demo');
	}
});

test('r gives another name; letters are text meanwhile, and Esc leaves it as it is', () => {
	const {files, world, home} = desk();
	expect(names(press(world, home, 'r', 'quiet den', enter))).toContain('quiet den');
	expect(files.kept.get('den')!.name).toBe('quiet den');
	press(world, home, 'r', 'other', {key: 'escape'});
	expect(files.kept.get('den')!.name).toBe('quiet den');
});

test('h shows the profiles of that room, oldest first, and leads back to the same line', () => {
	const {world, home} = desk();
	const shown = press(world, home, {key: 'down'}, 'h');
	if (shown.kind !== 'history') throw new Error(`The screen is ${shown.kind}.`);
	expect(shown.history.profiles.map(({date}) => date)).toEqual(['2024-01-01', '2025-04-18', '2026-04-18']);
	const back = press(world, shown, 'q') as HomeScreen;
	expect(back.entries[back.cursor]!.name).toBe('Den before');
});
