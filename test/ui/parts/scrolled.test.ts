import {expect, test} from 'vitest';
import {firstShown, scrolled} from '../../../source/ui/parts/scrolled.ts';

const lines = Array.from({length: 10}, (_, index) => ({text: `line ${index}`}));
const texts = (from: number, height: number) => scrolled(lines, from, height).map(({text}) => text);

test('scrolled leaves a text that fits as it is', () => {
	expect(scrolled([], 3, 5)).toEqual([]);
	expect(texts(4, 10)).toEqual(lines.map(({text}) => text));
});

test('scrolled tells how much it hides on either side', () => {
	expect(texts(0, 4)).toEqual(['line 0', 'line 1', 'line 2', '  7 lines below']);
	expect(texts(3, 4)).toEqual(['line 3', 'line 4', 'line 5', '  3 lines above, 4 lines below']);
	expect(texts(7, 4)).toEqual(['line 7', 'line 8', 'line 9', '  7 lines above']);
});

test('scrolled holds the window within the text', () => {
	expect(texts(99, 4)).toEqual(texts(7, 4));
	expect(firstShown(10, 99, 4)).toBe(7);
	expect(firstShown(10, -5, 4)).toBe(0);
});

test('scrolled never draws more lines than asked for', () => {
	for (let height = 0; height < 12; height++)
		for (let from = 0; from < 12; from++)
			expect(texts(from, height).length).toBeLessThanOrEqual(Math.max(1, height));
});
