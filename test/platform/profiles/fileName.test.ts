import fc from 'fast-check';
import {expect, test} from 'vitest';
import {isProfileFile, previousPath, slugOf} from '../../../source/platform/profiles/fileName.ts';

test.each([
	['', 'profile'],
	['Cellar, 2026', 'cellar-2026'],
	['  ../../etc  ', 'etc'],
	['Café Ünder', 'cafe-under'],
	['客厅', '客厅'],
	['CON', 'con-profile'],
	['!!!', 'profile'],
])('slugOf(%j) is %s', (name, slug) => expect(slugOf(name)).toBe(slug));

test('slugOf gives names that are safe in every folder', () => {
	fc.assert(
		fc.property(fc.string({unit: 'binary'}), name => {
			expect(slugOf(name)).toMatch(/^[\p{L}\p{N}][\p{L}\p{N}-]{0,88}$/u);
		}),
		{seed: 10, numRuns: 2000},
	);
});

test('the version before is named beside the file and is no profile of its own', () => {
	expect(previousPath('/a/room.json')).toBe('/a/room.previous.json');
	expect(isProfileFile('room.json')).toBe(true);
	expect(isProfileFile('room.previous.json')).toBe(false);
});
