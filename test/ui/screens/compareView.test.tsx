import {renderToString} from 'ink';
import {expect, test} from 'vitest';
import {pressesOf} from '../../../source/ui/keys/press.ts';
import {pressCompare} from '../../../source/ui/screens/compare.ts';
import {CompareView} from '../../../source/ui/screens/compareView.tsx';
import type {CompareScreen, World} from '../../../source/ui/screens/screen.ts';
import {ear, placedAt, screenAhead} from '../../study/survey/exampleNetwork.ts';
import {memoryFiles} from '../memoryFiles.ts';
import {readAloud} from '../screenReader.ts';

const world: World = {files: memoryFiles(), now: () => new Date('2026-04-18T20:00:00Z')};
const at = (x: number) =>
	placedAt({sofa: ear, screen: screenAhead, FL: [x, 0.5, 1], FR: [4, 0.5, 1]}).profile;
const start: CompareScreen = {kind: 'compare', older: at(1), newer: at(1.5), from: 0};

function press(keys: string, screen: CompareScreen = start): CompareScreen {
	let now = screen;
	for (const one of pressesOf(keys, {})) now = pressCompare(now, one, world) as CompareScreen;
	return now;
}

test('p shows the floor plans from their first line and hides them again', () => {
	expect(press('p', {...start, from: 7})).toMatchObject({isPlanShown: true, from: 0});
	expect(press('p', press('p')).isPlanShown).toBe(false);
});

test('q closes the floor plans first and leaves the comparison then', () => {
	const closed = press('q', press('p'));
	expect(closed).toMatchObject({kind: 'compare', isPlanShown: false});
	expect(press('q', closed).kind).toBe('home');
});

test('a leads from the floor plans back to the text that was shown', () => {
	expect(press('a', press('p', {...start, isFull: true}))).toMatchObject({isPlanShown: false, isFull: true});
});

test.each([
	[60, 16],
	[80, 24],
	[160, 50],
])('CompareView fits the plans into %i by %i and names the key', (columns, rows) => {
	const frame = renderToString(<CompareView screen={press('p')} size={{columns, rows}} />, {columns});
	expect(frame.split('\n').length).toBeLessThan(rows);
	expect(frame).toMatch(/[⠁-⣿]/);
	expect(frame).toContain('Before: Invented room');
	expect(frame).toContain('p plans');
});

test('CompareView reads the plans aloud without a drawing', () => {
	const words = readAloud(<CompareView screen={press('p')} size={{columns: 80, rows: 24}} />, 200);
	expect(words).toContain('Front left: 0.50 m to the right');
	expect(words).not.toMatch(/[⠀-⣿]/);
});
