import {describe, expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {cellWidth} from '../../../source/report/fitCells.ts';
import {compareLines} from '../../../source/ui/compare/compareLines.ts';
import {ear, placedAt, screenAhead} from '../../study/survey/exampleNetwork.ts';
import {exampleProfile} from '../walk/dialIn/exampleProfile.ts';

const newer = exampleProfile({name: 'Spring'});
const older: Profile = {
	...exampleProfile({name: 'Autumn', date: '2025-10-04'}),
	tape: newer.tape!.map(reading => (reading.from === 'FC' ? {...reading, metres: 2.2} : reading)),
};
const lines = (columns = 80, isFull = false, before = older) =>
	compareLines(before, newer, {columns, isFull, fullKey: 'a'}).map(({text}) => text);

test('compareLines says so when nothing differs', () => {
	const text = lines(80, false, {...newer, name: 'Twin'}).join('\n');
	expect(text).toContain('Nothing differs');
	expect(text).toContain('The same in both: Front left');
});

test('compareLines names both profiles and shows what moved side by side, most first', () => {
	const text = lines();
	expect(text[0]).toMatch(/Autumn \(2025-10-04\) → Spring \(2026-04-18\)/);
	expect(text[3]).toMatch(/Front centre .*2\.20 m → 2\.71 m/);
});

test('compareLines keeps a title that takes two lines together', () => {
	const text = lines(40);
	expect(text.slice(0, 3).join(' ')).toContain('(2026-04-18)');
	expect(text.filter(line => line.startsWith('(2026-04-18)')).length + text.indexOf('')).toBeLessThan(4);
});

test('compareLines tells why settings are others below the table', () => {
	expect(lines().join('\n')).toMatch(/Distances that changed[\s\S]*Front centre/);
});

test('compareLines tells what moved by its place where both plans are tied to walls, not by the distances at both ends', () => {
	const at = (sofa: readonly [number, number, number], x: number, changes: Partial<Profile>) =>
		placedAt({sofa: [...sofa], screen: screenAhead, FL: [x, 0.5, 1], FR: [4, 0.5, 1]}, changes).profile;
	const before = at(ear, 1, {name: 'Autumn', date: '2025-10-04'});
	const [x, y, z] = ear;
	const after = at([x, y - 0.4, z], 1, {name: 'Spring'});
	const short = compareLines(before, after, {columns: 80, isFull: false, fullKey: 'a'});
	const text = short.map(line => line.text).join('\n');
	// The sofa alone was carried; the speakers' distances to it changed with it.
	expect(text).toMatch(/Moved\n +- .*: 0\.40 m towards the screen wall/);
	expect(text).not.toContain('Distances that changed');
	const full = compareLines(before, after, {columns: 80, isFull: true, fullKey: 'a'});
	expect(full.map(line => line.text).join('\n')).toContain('Distances that changed');
});

test('compareLines reads the older profile in the unit of the newer one', () => {
	expect(lines(80, false, {...older, lengthUnit: 'ft-in'})).toEqual(lines());
});

test('compareLines never speaks of a flag of the command line', () => {
	for (const isFull of [false, true]) expect(lines(80, isFull).join('\n')).not.toContain('--');
});

describe.each([40, 60, 80, 120, 160])('at %i columns', columns => {
	test('compareLines keeps to the width', () => {
		for (const line of lines(columns, true)) expect(cellWidth(line)).toBeLessThanOrEqual(columns);
	});
});
