import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {wiringLines} from '../../../../source/ui/walk/wiring/lines.ts';
import {den} from '../../rooms.ts';

const textOf = (profile: Profile, columns = 80) => wiringLines(profile, columns).map(({text}) => text);

test('before anything is entered the page proposes every cable and says how to skip', () => {
	const text = textOf(den()).join('\n');
	expect(text).toMatch(/8 cables are proposed.*\] leaves it/s);
	expect(text).toContain('receiver/FL');
	expect(text).not.toContain('! ');
});

test('problems come first, and the order of connecting comes with its cautions', () => {
	const connections = [
		{id: 'a', from: 'receiver/FL', to: 'FL/speaker', kind: 'speaker' as const, polarity: 'reversed' as const},
	];
	const lines = textOf(den({wiring: {connections}}));
	const first = (pattern: RegExp) => lines.findIndex(line => pattern.test(line));
	expect(first(/! a: plus and minus are swapped/)).toBeGreaterThan(0);
	expect(first(/! a: plus/)).toBeLessThan(first(/Cables$/));
	expect(lines.join(' ')).toMatch(/Caution: Never connect a speaker cable to an amplifier that is on/);
	expect(lines.join(' ')).toMatch(/ladder on firm ground/);
});

test('no line is wider than the terminal', () => {
	for (const columns of [60, 80, 160])
		for (const line of textOf(den(), columns)) expect(line.length).toBeLessThanOrEqual(columns);
});
