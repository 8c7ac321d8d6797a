import {expect, test} from 'vitest';
import {listed, nameOf} from '../../source/profile/names.ts';

const profile = {
	seats: [{id: 'sofa', name: 'Sofa middle', reference: true}],
	subs: [{id: 'sub1', name: 'Front sub', fedBy: 'LFE1' as const}],
};

test.each([
	['sofa', 'Sofa middle'],
	['sub1', 'Front sub'],
	['TpFL', 'Top front left'],
	['wall:front', 'screen wall'],
	['screen', 'centre of the screen'],
	['somewhere', 'somewhere'],
	['constructor', 'constructor'],
	['FC+sub1', 'Front centre and Front sub'],
])('nameOf calls %s “%s”', (id, name) => {
	expect(nameOf(profile, id)).toBe(name);
});

test('listed puts “and” before the last name', () => {
	expect([[], ['A'], ['A', 'B'], ['A', 'B', 'C']].map(listed)).toEqual(['', 'A', 'A and B', 'A, B and C']);
});
