import {expect, test} from 'vitest';
import {startSession} from '../../source/ui/session.ts';
import {memoryFiles} from './memoryFiles.ts';
import {den} from './rooms.ts';

const open = () => {
	const files = memoryFiles({den: den()});
	return {files, session: startSession({files, now: () => new Date('2026-11-26T20:00:00Z')})};
};
const quit = {key: 'character', text: 'q'} as const;

test('a profile is marked as open for as long as its walk is shown', () => {
	const {files, session} = open();
	session.press([{key: 'enter'}]);
	expect(session.screen()).toMatchObject({kind: 'walk', file: 'den'});
	expect([...files.holders]).toEqual([['den', 'here']]);
	session.press([quit]);
	expect(session.screen().kind).toBe('home');
	expect([...files.holders]).toEqual([]);
});

test('a profile that is opened and left by keys that arrive together is not marked any more', () => {
	const {files, session} = open();
	session.press([{key: 'enter'}, quit]);
	expect(session.screen().kind).toBe('home');
	expect([...files.holders]).toEqual([]);
});
