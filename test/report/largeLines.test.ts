import {describe, expect, test} from 'vitest';
import {largeLines} from '../../source/report/largeLines.ts';

test('largeLines leaves words and nothing as plain text', () => {
	expect(largeLines('', 80)).toBeUndefined();
	expect(largeLines('full range', 80)).toBeUndefined();
	expect(largeLines('−', 80)).toBeUndefined();
});

test('largeLines leaves text plain when figures come after a word', () => {
	expect(largeLines('9 ft 4 in', 80)).toBeUndefined();
});

test('largeLines leaves text plain when it does not fit', () => {
	expect(largeLines('74.5', 15)).toBeUndefined();
	expect(largeLines('74.5', 16)).toHaveLength(3);
});

test('largeLines keeps the three lines of a value without unit equally wide', () => {
	for (const text of ['74.5', '−0.5', '+1.25', '9′ 4 1/2″', '2,86']) {
		const lines = largeLines(text, 80)!;
		expect(new Set(lines.map(line => line.length)).size, text).toBe(1);
	}
});

test('largeLines writes the unit beside the last line', () => {
	const [top, , bottom] = largeLines('−0.5 dB', 80)!;
	expect(top).not.toContain('dB');
	expect(bottom).toMatch(/ {2}dB$/);
});

test('largeLines takes every way to write a minus, a prime and a double prime', () => {
	expect(largeLines('-1', 80)).toEqual(largeLines('−1', 80));
	expect(largeLines('9\' 4"', 80)).toEqual(largeLines('9′ 4″', 80));
});

describe('every figure', () => {
	test('looks different from every other', () => {
		const drawn = [...'0123456789.,-+/′″'].map(figure => (largeLines(`${figure}1`, 80) ?? []).join('\n'));
		expect(new Set(drawn).size).toBe(17);
		expect(drawn).not.toContain('');
	});
});
