import {expect, test} from 'vitest';
import {wrap} from '../../source/report/wrap.ts';

test('`wrap` gives no line for an empty text', () => {
	expect(wrap('', 80)).toEqual([]);
	expect(wrap(' \n ', 80)).toEqual([]);
});

test('`wrap` breaks at blanks and hangs the lines under the first', () => {
	expect(wrap('Take it once more with the meter on a stand', 20, '  - ')).toEqual([
		'  - Take it once',
		'    more with the',
		'    meter on a stand',
	]);
});

test('`wrap` leaves a word whole that is wider than the line', () => {
	expect(wrap('a profiles/studio.json b', 10)).toEqual(['a', 'profiles/studio.json', 'b']);
});

test('`wrap` keeps a number with its unit in one line, and takes no word for a unit', () => {
	expect(wrap('moved by −0.18 m, then read', 13)).toEqual(['moved by', '−0.18 m, then', 'read']);
	expect(wrap('about 9 miles', 7)).toEqual(['about 9', 'miles']);
});

test('`wrap` goes on in the next line with a word wider than the line', () => {
	expect(wrap('see NNNNNNNNNNNN now', 8)).toEqual(['see', 'NNNNNNNN', 'NNNN now']);
	expect(wrap('客席の真ん中', 5)).toEqual(['客席', 'の真', 'ん中']);
});
