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
