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
const taped = (profile: Profile): Profile => ({
	...profile,
	tape: [
		{from: 'FC', to: 'sofa', metres: 2.7},
		{from: 'sub1', to: 'sofa', metres: 3.2},
	],
});

test('the page says so when there is nothing to blend, and Enter goes on', () => {
	const bare = bassProfile({channels: [{id: 'FC'}], subs: []});
	expect(draw(bare)).toContain('Nothing to blend');
	expect(press(bare, 'enter')).toEqual({kind: 'next'});
});

test('the page warns before the first tone and leads to the first question', () => {
	const text = draw(bassProfile());
	expect(text).toContain('0 of 12 tones read');
	expect(text).toContain('▲ Low tones move cones far');
	expect(press(bassProfile(), 'enter')).toEqual({kind: 'go', promptId: 'bass:set'});
});

test('the page shows the levels of each tone and leads to the next one', () => {
	const some = answered(bassProfile(), 10);
	expect(draw(some)).toMatch(/80 Hz +\d+\.\d +\d+\.\d +\d+\.\d +[+−]\d/);
	expect(press(some, 'enter')).toMatchObject({kind: 'go', promptId: expect.stringContaining('both later')});
});

test('the page tells delay, what to change and what it gains when all is read', () => {
	const text = draw(answered(bassProfile()));
	// Sub 14.3 + 8 ms, centre 8 + 10 ms: 4.3 ms later.
	expect(text).toMatch(/Sub 1: 4\.3 ms later \(± 0\.\d\)\./);
	expect(text).toMatch(/▸ receiver, .*: delay 8\.0 ms to \d\.\d ms/);
	expect(text).toMatch(/At 80 Hz both together gain \+\d\.\d dB/);
});

test('Enter leads to the stop that asks to type the changed values in, once', () => {
	const decided = withDecided(taped(bassProfile()), '2026-04-18T09:00:00Z');
	const all = answered(decided);
	expect(press(all, 'enter')).toEqual({kind: 'go', promptId: 'dialIn'});
	const anew = withDecided(all, '2026-04-18T11:00:00Z');
	expect(press(anew, 'enter')).toEqual({kind: 'next'});
	expect(draw(anew)).toContain('✓ The settings hold what the tones want');
});

test.each([40, 60, 80, 120, 160])('the page keeps to its size at %i columns', columns => {
	for (const profile of [bassProfile(), answered(bassProfile())]) {
		for (const height of [5, 12, 20]) {
			const lines = draw(profile, columns, height).split('\n');
			expect(lines.length).toBeLessThanOrEqual(height);
			for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(columns);
		}
	}
});

test('the page draws both sides and their sum, now and then, when there is one answer', () => {
	const text = draw(answered(bassProfile()), 80, 60);
	expect(text).toMatch(/a \S+ Front centre .*b \S+ Sub 1 .*c \S+ both now .*d \S+ both then/);
	expect(text).toMatch(/[⠁-⣿]/);
	expect(draw(answered(bassProfile(), 10), 80, 60)).not.toContain('both then');
});

test('the page is read aloud in words, the curves too', () => {
	const words = readAloud(view(answered(bassProfile()), 80, 40), 120);
	expect(words).toContain('4.3 ms later');
	expect(words).toContain('both then: ');
	expect(words).not.toMatch(/[⠁-⣿]/);
});
