import fc from 'fast-check';
import stringWidth from 'string-width';
import {expect, test} from 'vitest';
import {cellWidth, fitCells} from '../../source/report/fitCells.ts';

test('fitCells gives nothing when there is no room', () => {
	expect(fitCells('Front left', 0)).toBe('');
	expect(fitCells('', 3)).toBe('   ');
});

test('fitCells cuts with an ellipsis when the text is too wide', () => {
	expect(fitCells('Front left', 6)).toBe('Front…');
	expect(fitCells('Front left', 10)).toBe('Front left');
});

test('fitCells puts the blanks on the other side of the alignment', () => {
	expect(fitCells('1.5', 5, 'right')).toBe('  1.5');
	expect(fitCells('1.5', 6, 'centre')).toBe(' 1.5  ');
});

test('fitCells never cuts a wide character in half', () => {
	expect(fitCells('客厅左边', 6)).toBe('客厅… ');
});

test('fitCells fills exactly the cells asked for, whatever the text', () => {
	fc.assert(
		fc.property(fc.string({unit: 'grapheme'}), fc.integer({min: 1, max: 40}), (text, cells) => {
			fc.pre(!/\p{C}|\p{Z}|\p{M}/u.test(text));
			expect(stringWidth(fitCells(text, cells))).toBe(cells);
		}),
		{seed: 4},
	);
});

test('cellWidth counts two cells for wide characters', () => {
	expect(cellWidth('客厅')).toBe(4);
	expect(cellWidth('Front left')).toBe(10);
});

test('cellWidth agrees with the width tables for every single character below U+3000', () => {
	const differing: string[] = [];
	for (let code = 0x20; code < 0x3000; code++) {
		const character = String.fromCharCode(code);
		if (!/\p{C}/u.test(character) && cellWidth(character) !== stringWidth(character)) {
			differing.push(code.toString(16));
		}
	}

	expect(differing).toEqual([]);
});
