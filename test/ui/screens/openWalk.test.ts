import {expect, test} from 'vitest';
import {type Press, pressesOf} from '../../../source/ui/keys/press.ts';
import {openWalk} from '../../../source/ui/screens/openWalk.ts';
import {keep, pressAll} from '../../../source/ui/screens/press.ts';
import type {AppScreen, World} from '../../../source/ui/screens/screen.ts';
import {startSession} from '../../../source/ui/session.ts';
import {memoryFiles} from '../memoryFiles.ts';
import {den} from '../rooms.ts';

function heldElsewhere() {
	const files = memoryFiles({den: den()});
	files.holders.set('den', 'elsewhere');
	const world: World = {files, now: () => new Date('2026-04-18T20:00:00Z')};
	return {files, world, screen: openWalk(world, 'den') as AppScreen};
}

const key = (screen: AppScreen, world: World, ...presses: readonly (Press | string)[]) =>
	presses.reduce<AppScreen>(
		(now, one) => pressAll(now, typeof one === 'string' ? pressesOf(one, {}) : [one], world),
		screen,
	);
const down: Press = {key: 'down'};
const enter: Press = {key: 'enter'};

test('a profile that another app has open is told before anything is shown of it', () => {
	const {screen} = heldElsewhere();
	expect(screen).toMatchObject({trouble: {why: 'held', text: 'den is open elsewhere.'}});
});

test('1 and Enter goes back to the list and leaves the mark of the other', () => {
	const {files, world, screen} = heldElsewhere();
	expect(key(screen, world, '1', enter).kind).toBe('home');
	expect(files.holders.get('den')).toBe('elsewhere');
});

test('2 and Enter looks around without writing, and saves answers that are given', () => {
	const {files, world, screen} = heldElsewhere();
	const moved = keep(key(screen, world, '2', enter, down, down), world);
	expect(files.saves).toBe(0);
	expect(key(moved, world, 'q').kind).toBe('home');
	expect(files.saves).toBe(0);
	key(moved, world, '6-1', enter);
	expect(files.saves).toBe(1);
});

test('a session marks the file that it walks, and takes the mark away when it leaves', () => {
	const files = memoryFiles({den: den()});
	const session = startSession({files, now: () => new Date()}, 'den');
	expect(files.holders.get('den')).toBe('here');
	session.press(pressesOf('q', {}));
	expect(files.holders.has('den')).toBe(false);
	session.press([enter]);
	expect(files.holders.get('den')).toBe('here');
	session.interrupt();
	expect(files.holders.has('den')).toBe(false);
});

test.each([
	['failed', 'The disk is full.'],
	['changed', 'den was changed by another program.'],
] as const)('an interrupt keeps what a save refused (%s) in a new file and says where', (why, text) => {
	const files = memoryFiles({den: den()});
	const session = startSession({files, now: () => new Date()}, 'den');
	files.refusals.push({why, text}, {why, text});
	session.press([...pressesOf('9-4', {}), enter]);
	session.interrupt();
	expect(files.kept.get('den')!.tape).toEqual([]);
	expect(files.kept.get('den-2')!.tape).toHaveLength(1);
	expect(session.said().join(' ')).toContain('den-2');
});

test('an interrupt tries the file itself first: the disk may have room again', () => {
	const files = memoryFiles({den: den()});
	const session = startSession({files, now: () => new Date()}, 'den');
	files.refusals.push({why: 'failed', text: 'The disk is full.'});
	session.press([...pressesOf('9-4', {}), enter]);
	session.interrupt();
	expect(files.kept.get('den')!.tape).toHaveLength(1);
	expect(session.said()).toEqual([]);
});

test('an interrupt that can keep the answers nowhere says so', () => {
	const files = memoryFiles({den: den()});
	const session = startSession({files, now: () => new Date()}, 'den');
	const refusal = {why: 'failed', text: 'The disk is full.'} as const;
	files.refusals.push(refusal, refusal);
	files.isFull = true;
	session.press([...pressesOf('9-4', {}), enter]);
	session.interrupt();
	expect(session.said().join(' ')).toContain('could not be kept anywhere');
});
