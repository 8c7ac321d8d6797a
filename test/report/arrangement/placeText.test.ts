import {expect, test} from 'vitest';
import {moveInTapeTerms, placeInTapeTerms} from '../../../source/report/arrangement/placeText.ts';

const shape = {kind: 'box', widthMetres: 4.6, lengthMetres: 6.2, heightMetres: 2.4} as const;

test('a place is told from the nearer walls', () => {
	expect(placeInTapeTerms([1, 5, 1], shape, 'm')).toBe(
		'1.00 m from the left wall, 1.20 m from the back wall',
	);
});

test('what is moved past the middle of the room keeps its walls, so that the two lengths can be told apart', () => {
	expect(moveInTapeTerms({from: [2.29, 3.2, 1], to: [2.31, 3, 1]}, shape, 'm')).toBe(
		'to 2.29 m from the right wall, 3.00 m from the screen wall (now 2.31 m and 3.20 m)',
	);
});
