import {expect, test} from 'vitest';
import {withMoved} from '../../source/profile/moved.ts';
import type {Profile} from '../../source/profile/types.ts';
import {pressesOf} from '../../source/ui/keys/press.ts';
import {openWalk} from '../../source/ui/screens/openWalk.ts';
import {pressAll} from '../../source/ui/screens/press.ts';
import type {AppScreen, WalkScreen, World} from '../../source/ui/screens/screen.ts';
import {promptsFor} from '../../source/ui/walk/stops.ts';
import {memoryFiles} from '../ui/memoryFiles.ts';
import {den} from '../ui/rooms.ts';

const read = (source: string, round: 'first' | 'proof' = 'first') => ({
	source,
	seat: 'seat1',
	decibels: 75,
	weighting: 'C' as const,
	round,
});
const profile: Profile = den({
	tape: [
		{from: 'LS', to: 'seat1', metres: 2},
		{from: 'RS', to: 'seat1', metres: 2.1},
		{from: 'LS', to: 'wall:left', metres: 0.3},
		{from: 'wall:left', to: 'wall:right', metres: 4},
	],
	meter: [read('LS'), read('RS'), read('LS', 'proof')],
});

test('`withMoved` sets aside what was read where the thing stood, and nothing else', () => {
	const {tape, meter} = withMoved(profile, 'LS');
	expect(tape!.map(({setAside}) => setAside ?? false)).toEqual([true, false, true, false]);
	expect(meter!.map(({setAside}) => setAside ?? false)).toEqual([true, false, true]);
});

test('a moved seat takes its lengths and all its levels with it', () => {
	const {tape, meter} = withMoved(profile, 'seat1');
	expect(tape!.filter(({setAside}) => setAside)).toHaveLength(2);
	expect(meter!.every(({setAside}) => setAside)).toBe(true);
});

/** Corrects the length of the left surround to 3 m and gives an answer to what is asked about it. */
function corrected(answer: string): Profile {
	const files = memoryFiles({den: {...profile, walk: {prompt: 'tape:LS:seat1'}}});
	const world: World = {files, now: () => new Date('2026-04-18T20:00:00Z')};
	let screen: AppScreen = openWalk(world, 'den')!;
	for (const text of ['e', '3m', answer]) {
		screen = pressAll(screen, pressesOf(text, {}), world);
		if (text !== 'e') screen = pressAll(screen, [{key: 'enter'}], world);
	}

	return (screen as WalkScreen).state.subject;
}

const isAnswered = (subject: Profile, id: string) =>
	promptsFor(subject).find(prompt => prompt.id === id)?.isAnswered;

test('a length that was misread leaves the level as it is', () => {
	const after = corrected('1');
	expect(after.tape![0]).toMatchObject({metres: 3});
	expect(isAnswered(after, 'meter:LS:seat1')).toBe(true);
});

test('a speaker that was moved has its level asked again; the old readings stay in the file', () => {
	const after = corrected('2');
	expect(isAnswered(after, 'tape:LS:seat1')).toBe(true);
	expect(isAnswered(after, 'meter:LS:seat1')).toBe(false);
	expect(isAnswered(after, 'meter:RS:seat1')).toBe(true);
	expect(after.tape).toHaveLength(5);
	expect(after.meter).toHaveLength(3);
});
