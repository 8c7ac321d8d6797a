import {describe, expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {cellWidth} from '../../../source/report/fitCells.ts';
import {planLines} from '../../../source/ui/compare/planLines.ts';
import {ear, placedAt, screenAhead} from '../../study/survey/exampleNetwork.ts';
import {exampleProfile} from '../walk/dialIn/exampleProfile.ts';

const at = (x: number, name: string, changes: Partial<Profile> = {}) =>
	placedAt({sofa: ear, screen: screenAhead, FL: [x, 0.5, 1], FR: [4, 0.5, 1]}, {name, ...changes}).profile;
const older = at(1, 'Autumn', {date: '2025-10-04'});
const newer = at(1.5, 'Spring');
const text = (before = older, after = newer, isInWords = false, columns = 80, rows = 21) =>
	planLines(before, after, {columns, rows, isInWords}).map(line => line.text);

test('planLines says so where neither profile has a place for anything', () => {
	const bare = exampleProfile({tape: []});
	expect(text(bare, {...bare, name: 'Twin'}).join('\n')).toContain('no plan, too few distances are read');
});

test('planLines shows both plans under their names, and what moved below', () => {
	const lines = text();
	expect(lines[0]).toMatch(/^Before: Autumn \(2025-10-04\) +After: Spring \(2026-04-18\)$/);
	expect(lines.join('\n')).toContain('  - Front left: 0.50 m to the right; now 1.50 m from the left wall.');
	expect(lines).toContain('Dots lead back to where a thing stood.');
});

test('planLines names lengths in the unit of the newer profile', () => {
	expect(text(older, {...newer, lengthUnit: 'ft-in'}).join('\n')).toMatch(
		/Front left: 1′ 7 3\/4″ to the right/,
	);
});

test('planLines in words holds everything and no drawing', () => {
	const words = text(older, newer, true).join('\n');
	expect(words).not.toMatch(/[⠀-⣿]/);
	expect(words).toMatch(
		/0\.50 m to the right[\s\S]*Before: Autumn[\s\S]*Front left: 1\.00 m from[\s\S]*Front left: 1\.50 m/,
	);
});

describe.each([40, 60, 80, 120, 160])('at %i columns', columns => {
	test('planLines keeps to the width', () => {
		for (const line of text(older, newer, false, columns))
			expect(cellWidth(line)).toBeLessThanOrEqual(columns);
	});
});
