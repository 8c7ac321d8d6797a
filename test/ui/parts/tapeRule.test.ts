import {expect, test} from 'vitest';
import {tapeRule} from '../../../source/ui/parts/tapeRule.ts';

test('`tapeRule` is empty without questions or without room', () => {
	expect(tapeRule([], 0, 40)).toBe('');
	expect(tapeRule([true], 0, 1)).toBe('');
});

test('`tapeRule` marks each question, heavy where it is answered, with the pointer where one stands', () => {
	expect(tapeRule([true, true, false, false], 2, 16)).toBe('┻━━━━┻━━━━▼────┴');
});

test('`tapeRule` leaves the marks out where there are more questions than room, and keeps its width', () => {
	const many = Array.from({length: 100}, (_, index) => index < 50);
	const rule = tapeRule(many, 99, 40);
	expect(rule).toMatch(/^━{19,20}─{19,20}▼$/);
	expect(rule).toHaveLength(40);
});
