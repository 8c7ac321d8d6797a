import {describe, expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {cellWidth} from '../../../../source/report/fitCells.ts';
import {withDecided, withTick} from '../../../../source/ui/walk/dialIn/decide.ts';
import {dialItems} from '../../../../source/ui/walk/dialIn/items.ts';
import {dialInLines} from '../../../../source/ui/walk/dialIn/lines.ts';
import {type DialInState, dialInStart} from '../../../../source/ui/walk/dialIn/press.ts';
import {exampleProfile} from './exampleProfile.ts';

const decided = withDecided(exampleProfile(), '2026-04-18T10:00:00Z');
const single: DialInState = {...dialInStart, isSingle: true};
const draw = (profile: Profile, state: DialInState = single, columns = 80, height = 16, isPlain = false) =>
	dialInLines(profile, state, {columns, height, isPlain}).map(({text, after = ''}) => text + after);
/** The one value of the master volume. */
const masterRow = dialItems(decided, decided.settings!.at(-1)!, 1).find(({id}) => id === 'masterVolume')!
	.values[0]!.tick;
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
			for (const isSingle of [false, true]) {
				const lines = draw(profile, {...dialInStart, isSingle}, columns, height);
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
	const plain = draw(decided, single, 80, 16, true).join('\n');
	expect(plain).toMatch(/Trim +−0\.5 dB +was 0\.0 dB/);
	expect(plain).not.toMatch(/[▀▄█]/);
	expect(draw(decided, single, 30, 12).join('\n')).toMatch(/Trim +−0\.5 dB/);
});

test('dialInLines tells ticks by a sign and a word', () => {
	const ticked = withTick(decided, 'set1', 'FL', true);
	expect(draw(ticked, {...single, tick: 'FL.trim'}).join('\n')).toContain('✓ Done.');
	expect(draw(ticked, dialInStart).join('\n')).toMatch(/✓ Front left/);
	expect(draw(allTicked).join('\n')).toContain('✓ All 7 are typed in');
});

test('dialInLines names what is out of date before anything is typed in', () => {
	const stale = {...decided, meter: [...decided.meter!, {...decided.meter![2]!, decibels: 69}]};
	const text = draw(stale).join('\n');
	expect(text).toContain('out of date');
	expect(text).toMatch(/other values for .*Front centre/);
	expect(draw(stale, {...single, isOldKept: true}).join('\n')).toContain('Old values');
});

test('dialInLines warns for the ears at the master volume', () => {
	expect(draw(decided, {...single, tick: masterRow}).join('\n')).toContain('▲ Ears');
});

test('a page shows the value under the cursor large, every row with what it was, and how far one is', () => {
	const text = draw(decided, dialInStart).join('\n');
	expect(text).toMatch(/Distances, into the receiver: page 1 of \d/);
	expect(text).toMatch(/0 of \d+ typed in/);
	expect(text).toMatch(/[▀▄█]/);
	expect(text).toMatch(/Front left +\d\.\d\d m +was 2\.80 m/);
	expect(text).toContain('Then: Trims');
});

test('why is told in a few lines: old and new, then the reasons', () => {
	const why = draw(decided, {...dialInStart, tick: 'FL.trim', isWhyShown: true}, 80, 20).join('\n');
	expect(why).toMatch(/Front left, trim: 0\.0 dB → −0\.5 dB \(± \d\.\d dB\)/);
	expect(why).toMatch(/Target 75\.0 −/);
});
