import {expect, test} from 'vitest';
import {footerText} from '../../../source/ui/parts/footerText.ts';

const keys = [
	['Enter', 'take'],
	['u', 'undo'],
	['?', 'help'],
] as const;

test('`footerText` stands wide apart where there is room', () => {
	expect(footerText(keys, 40)).toBe(' Enter take   u undo   ? help');
});

test('`footerText` moves together, then leaves out what comes last, but never the help', () => {
	expect(footerText(keys, 28)).toBe(' Enter take  u undo  ? help');
	expect(footerText(keys, 20)).toBe(' Enter take  ? help');
	expect(footerText(keys, 3)).toBe('');
});
