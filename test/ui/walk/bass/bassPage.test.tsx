import {Box, renderToString} from 'ink';
import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {cellWidth} from '../../../../source/report/fitCells.ts';
import type {NamedKey} from '../../../../source/ui/keys/press.ts';
import {bassPage} from '../../../../source/ui/walk/bass/bassPage.tsx';
import {withDecided} from '../../../../source/ui/walk/dialIn/decide.ts';
import {factsOf} from '../../../../source/ui/walk/stops.ts';
import {readAloud} from '../../screenReader.ts';
import {answered, bassProfile} from './exampleRoom.ts';

const view = (profile: Profile, columns: number, height: number) => (
	<Box>
		{bassPage.view({profile, state: bassPage.start(profile), columns, height, walk: factsOf(profile)})}
	</Box>
);
const draw = (profile: Profile, columns = 80, height = 40) =>
	renderToString(view(profile, columns, height), {columns});
const press = (profile: Profile, key: NamedKey) =>
	bassPage.press(
		profile,
		bassPage.start(profile),
		{key},
		{decidedAt: '2026-04-18T10:00:00Z', walk: factsOf(profile)},
	);
/** The set and the way come before the first reading. */
const read = (count: number, softerDb = 0) => answered(bassProfile(), 3 + count, softerDb);

test('the page says so when there is nothing to blend, and Enter goes on', () => {
	const bare = bassProfile({channels: [{id: 'FC'}], subs: []});
	expect(draw(bare)).toContain('Nothing to blend');
	expect(press(bare, 'enter')).toEqual({kind: 'next'});
});

test('the page shows its ways with minutes and odds, warns, and leads to the first question', () => {
	const text = draw(bassProfile());
	expect(text).toMatch(/Tones at three delays: 13 readings, 3 changes at a box, about \d+ min/);
	expect(text).toContain('The loudest of ten settings');
	expect(text).toMatch(/louder in\s+\d+ %/);
	expect(text).toContain('▲ Low tones move cones far');
	expect(press(bassProfile(), 'enter')).toEqual({kind: 'go', promptId: 'bass:set'});
});

test('the page lists the settings in the order in which they are asked, with what to turn now', () => {
	const some = read(4);
	const text = draw(some);
	expect(text).toMatch(/✓ as it stands, 3 of 3 read/);
	expect(text).toMatch(/▸ all subs \d\.\d ms later: receiver, .*: delay 8\.0 ms to\s+\d+\.\d ms, 1 of 3/s);
	expect(text).toContain('allow several answers');
	expect(press(some, 'enter')).toMatchObject({kind: 'go', promptId: expect.stringContaining('tone FC+sub1')});
});

test('the page tells what to try and what it should gain', () => {
	const text = draw(read(9)).replaceAll(/\s+/g, ' ');
	expect(text).toMatch(/To try, not yet verified: all subs together .*\+\d\.\d dB expected/);
	expect(text).toMatch(/▸ receiver, .*: delay 8\.0 ms to \d\.\d ms/);
});

test('what was kept leads to Dial-in once, and then stands', () => {
	const decided = withDecided(bassProfile(), '2026-04-18T09:00:00Z');
	const all = answered(decided);
	expect(draw(all)).toContain('✓ Kept');
	expect(press(all, 'enter')).toEqual({kind: 'go', promptId: 'dialIn'});
	const anew = withDecided(all, '2026-04-18T11:00:00Z');
	expect(press(anew, 'enter')).toEqual({kind: 'next'});
	const text = draw(anew).replaceAll(/\s+/g, ' ');
	expect(text).toContain('Decided since, and stands');
	// Nothing is ordered that is done.
	expect(text).not.toMatch(/▸ receiver/);
});

test('what was put back shows the old entry large', () => {
	const text = draw(read(40, 20));
	expect(text).toContain('Tried and put back');
	expect(text).toContain('Type the old entries in again');
	expect(text).toMatch(/▄▀▀▄.*\n.*█.*\n.*ms/);
	expect(readAloud(view(read(40, 20), 80, 40), 120)).toContain('8.0 ms');
});

test.each([40, 60, 80, 120, 160])('the page keeps to its size at %i columns', columns => {
	for (const profile of [bassProfile(), read(4), read(9), read(40), read(40, 20)]) {
		for (const height of [5, 12, 20]) {
			const lines = draw(profile, columns, height).split('\n');
			expect(lines.length).toBeLessThanOrEqual(height);
			for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(columns);
		}
	}
});

test('one key tells in a few lines how the advice came about, and takes it away again', () => {
	const some = read(9);
	const world = {decidedAt: '2026-04-18T10:00:00Z', walk: factsOf(some)};
	const start = bassPage.start(some);
	const told = bassPage.press(some, start, {key: 'character', text: 'w'}, world);
	if (told.kind !== 'state') throw new Error('w shows nothing.');
	const text = renderToString(
		<Box>
			{bassPage.view({profile: some, state: told.state, columns: 80, height: 24, walk: factsOf(some)})}
		</Box>,
		{columns: 80},
	).replaceAll(/\s+/g, ' ');
	expect(text).toMatch(
		/receiver, .*: delay 8\.0 ms to \d\.\d ms .*tones of one front were read at three delays/,
	);
	expect(text).toMatch(/The loudest mean is the one to try\. \+\d\.\d dB expected/);
	expect(bassPage.press(some, told.state, {key: 'character', text: 'w'}, world)).toMatchObject({
		state: {isWhyShown: false},
	});
	expect(bassPage.press(bassProfile(), start, {key: 'character', text: 'w'}, world)).toEqual({kind: 'none'});
});
