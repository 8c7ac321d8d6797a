import {renderToString} from 'ink';
import type {ReactElement} from 'react';
import {expect, test} from 'vitest';
import {pressesOf} from '../../../source/ui/keys/press.ts';
import {openWalk} from '../../../source/ui/screens/openWalk.ts';
import {pressAll} from '../../../source/ui/screens/press.ts';
import type {AppScreen, WalkScreen, World} from '../../../source/ui/screens/screen.ts';
import {factsOf} from '../../../source/ui/walk/stops.ts';
import {memoryFiles} from '../memoryFiles.ts';
import {den} from '../rooms.ts';

const atKeep = den({name: 'Den 2026', walk: {prompt: 'keep'}});

function opened(others: Parameters<typeof memoryFiles>[0], shipped: readonly string[] = []) {
	const files = memoryFiles({den: atKeep, ...others}, shipped);
	const world: World = {files, now: () => new Date('2026-04-18T20:00:00Z')};
	return {files, world, screen: openWalk(world, 'den') as AppScreen};
}

const key = (screen: AppScreen, world: World, text: string) => pressAll(screen, pressesOf(text, {}), world);

test('c on the page Keep compares with the newest older profile, own before demo, and o goes through the others', () => {
	const {world, screen} = opened(
		{
			oldest: den({name: 'Den 2023', date: '2023-04-01'}),
			last: den({name: 'Den 2025', date: '2025-04-01'}),
			later: den({name: 'Den 2027', date: '2027-04-01'}),
			demo: den({name: 'Demo', date: '2026-01-01'}),
		},
		['demo'],
	);
	let now = key(screen, world, 'c');
	const names = [];
	for (let count = 0; count < 4; count++) {
		if (now.kind !== 'compare') throw new Error(`The screen is ${now.kind}.`);
		expect(now.newer.name).toBe('Den 2026');
		names.push(now.older.name);
		now = key(now, world, 'o');
	}

	expect(names).toEqual(['Den 2025', 'Den 2023', 'Demo', 'Den 2025']);
});

test('q in that comparison goes back to Keep', () => {
	const {world, screen} = opened({last: den({name: 'Den 2025', date: '2025-04-01'})});
	expect(key(key(screen, world, 'c'), world, 'q')).toMatchObject({
		kind: 'walk',
		file: 'den',
		state: {promptId: 'keep'},
	});
});

test('without an older profile Keep says so', () => {
	const {world, screen} = opened({later: den({name: 'Den 2027', date: '2027-04-01'})});
	const after = key(screen, world, 'c') as WalkScreen;
	const {subject} = after.state;
	const page = after.page!.open.view({profile: subject, columns: 80, height: 20, walk: factsOf(subject)});
	expect(renderToString(page as ReactElement, {columns: 80})).toContain('no older profile');
});
