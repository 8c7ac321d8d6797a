import {expect, test} from 'vitest';
import {listed, nameOf, subjectText} from '../../source/profile/names.ts';

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

test.each([
	[['centre of the screen', 'Front left'], 'Centre of the screen and Front left'],
	[['screen wall'], 'Screen wall'],
	// A cable's label and a seat's name are what somebody wrote on it.
	[['fl 2'], 'fl 2'],
	[['sofa', 'screen wall'], 'sofa and screen wall'],
])('a line about %j begins with “%s”', (names, text) => {
	expect(subjectText(names)).toBe(text);
});
