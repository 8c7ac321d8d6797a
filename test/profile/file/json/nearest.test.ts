import {expect, test} from 'vitest';
import {editDistance, nameRemedy, nearestName} from '../../../../source/profile/file/json/nearest.ts';

test.each([
	['', '', 0],
	['a', '', 1],
	['FLL', 'FL', 1],
	['sofa', 'soaf', 1],
	['kitten', 'sitting', 3],
])('editDistance(%j, %j) is %i', (one, other, edits) => {
	expect(editDistance(one, other)).toBe(edits);
});

test('nearestName finds one slip in a short name and no more', () => {
	expect(nearestName('FLL', ['FR', 'FL'])).toBe('FL');
	expect(nearestName('XYZ', ['FR', 'FL'])).toBeUndefined();
	expect(nearestName('', [])).toBeUndefined();
});

test('nameRemedy lists what is known where nothing is near', () => {
	expect(nameRemedy('kitchen', ['sofa', 'left'])).toBe('Known here: sofa, left.');
	expect(nameRemedy('kitchen', [])).toBe('There is none yet. Add it first.');
});
