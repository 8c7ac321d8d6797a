import {describe, expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {cellWidth} from '../../../../source/report/fitCells.ts';
import {withDecided, withTick} from '../../../../source/ui/walk/dialIn/decide.ts';
import {dialInLines} from '../../../../source/ui/walk/dialIn/lines.ts';
import {type DialInState, dialInStart} from '../../../../source/ui/walk/dialIn/press.ts';
import {exampleProfile} from './exampleProfile.ts';

const decided = withDecided(exampleProfile(), '2026-04-18T10:00:00Z');
const draw = (
	profile: Profile,
	state: DialInState = dialInStart,
	columns = 80,
	height = 16,
	isPlain = false,
) => dialInLines(profile, state, {columns, height, isPlain}).map(({text, after = ''}) => text + after);
const allTicked = ['FL', 'FR', 'FC', 'LFE1', 'A', 'lfeLowPass', 'masterVolume'].reduce(
	(profile, id) => withTick(profile, 'set1', id, true),
	decided,
);

test('dialInLines says what is missing when nothing was measured', () => {
	const bare = exampleProfile({settings: [], tape: [], meter: []});
	expect(draw(bare).join('\n')).toContain('Nothing to type in yet');
});

describe.each([30, 44, 60, 80, 120, 160])('at %i columns', columns => {
	test.each([4, 8, 12, 16, 30])('dialInLines stays inside %i lines in every state', height => {
		for (const profile of [exampleProfile(), decided, allTicked]) {
			for (const isList of [false, true]) {
				const lines = draw(profile, {...dialInStart, isList}, columns, height);
				expect(lines.length).toBeLessThanOrEqual(height);
				for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(columns);
			}
		}
	});
});

test('dialInLines shows one item large, what it was, how far one is and what comes next', () => {
	const text = draw(decided).join('\n');
	expect(text).toMatch(/Front left +0 of 7 done/);
	expect(text).toMatch(/was 2\.80 m +was 0\.0 dB +new/);
	expect(text).toContain('Then: Front right');
	expect(text).toMatch(/[▀▄█]/);
	expect(text).not.toContain('Front centre');
});

test('dialInLines writes values plainly for a screen reader and where there is no room', () => {
	const plain = draw(decided, dialInStart, 80, 16, true).join('\n');
	expect(plain).toMatch(/Trim +−0\.5 dB +was 0\.0 dB/);
	expect(plain).not.toMatch(/[▀▄█]/);
	expect(draw(decided, dialInStart, 30, 12).join('\n')).toMatch(/Trim +−0\.5 dB/);
});

test('dialInLines tells ticks by a sign and a word', () => {
	const ticked = withTick(decided, 'set1', 'FL', true);
	expect(draw(ticked, {...dialInStart, itemId: 'FL'}).join('\n')).toContain('✓ Done.');
	expect(draw(ticked, {...dialInStart, isList: true}).join('\n')).toMatch(/✓ Front left/);
	expect(draw(allTicked).join('\n')).toContain('✓ All 7 are typed in');
});

test('dialInLines names what is out of date before anything is typed in', () => {
	const stale = {...decided, meter: [...decided.meter!, {...decided.meter![2]!, decibels: 69}]};
	const text = draw(stale).join('\n');
	expect(text).toContain('out of date');
	expect(text).toMatch(/other values for .*Front centre/);
	expect(draw(stale, {...dialInStart, isOldKept: true}).join('\n')).toContain('Old values');
});

test('dialInLines warns for the ears at the master volume', () => {
	expect(draw(decided, {...dialInStart, itemId: 'masterVolume'}).join('\n')).toContain('▲ Ears');
});

test('dialInLines keeps the current item in the window of the list and counts the rest', () => {
	const lines = draw(decided, {...dialInStart, isList: true, itemId: 'LFE1'}, 80, 5);
	expect(lines.some(line => line.startsWith('›') && line.includes('Low frequency'))).toBe(true);
	expect(lines.at(-1)).toMatch(/^ {2}\d above, \d below$/);
});
