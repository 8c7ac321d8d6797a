import fc from 'fast-check';
import {expect, test} from 'vitest';
import {visibleText} from '../../source/profile/visibleText.ts';

test('visibleText writes out controls of both sets, line separators and turns of direction', () => {
	expect(visibleText('a\u001b[2Jb\u0007\u009b1m\u007f\u0085')).toBe(
		'a\\u001b[2Jb\\u0007\\u009b1m\\u007f\\u0085',
	);
	expect(visibleText('\u202egnp.exe\u2066\u2028\r')).toBe('\\u202egnp.exe\\u2066\\u2028\\u000d');
});

test('visibleText leaves words, line feeds, tabs and marks of right-to-left scripts as they are', () => {
	const text = 'Front “left”, 9′ 4½″\n\tעברית\u200f 客 é 🙂';
	expect(visibleText(text)).toBe(text);
});

test('JSON holds the same value after visibleText', () => {
	fc.assert(
		fc.property(fc.string({unit: fc.constantFrom(...'ab"\\\u0007\u001b\u007f\u009b\u202e\u2028é')}), text => {
			expect(JSON.parse(visibleText(JSON.stringify({[text]: text})))).toEqual({[text]: text});
		}),
	);
});
