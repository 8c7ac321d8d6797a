import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {type Press, pressesOf} from '../../../source/ui/keys/press.ts';
import {startSession} from '../../../source/ui/session.ts';
import {memoryFiles} from '../memoryFiles.ts';

const enter = '\r';
const escapeKey: Press = {key: 'escape'};

function begin(files = memoryFiles()) {
	const session = startSession({files, now: () => new Date('2026-04-18T20:00:00Z')});
	const press = (...keys: readonly string[]) => {
		for (const key of keys) session.press(pressesOf(key, {return: key === enter}));
	};
	return {files, session, press};
}

/** A room that can be planned, as four answers make it. */
function room(): Profile {
	const {files, press} = begin();
	press('p', '3.6m', enter, '4.6m', enter, '2.4m', enter, '3.1m', enter, 'r', 'subs 2', enter);
	return [...files.kept.values()].at(-1)!;
}

test('planning a demo leaves no file of one’s own until something is changed; then a copy holds it', () => {
	const demo = {...room(), name: 'Demo'};
	const {files, session, press} = begin(memoryFiles({demo}, ['demo']));
	press('p');
	expect(session.screen()).toMatchObject({kind: 'planning', file: 'demo'});
	session.press([escapeKey]);
	expect(session.screen().kind).toBe('home');
	expect([...files.kept.keys()]).toEqual(['demo']);
	expect([...files.holders.keys()]).toEqual([]);

	press('p', 'r', 'decay 0.5', enter);
	expect(session.screen()).toMatchObject({kind: 'planning', file: 'demo-copy'});
	expect(files.kept.get('demo')).toEqual(demo);
	expect(files.kept.get('demo-copy')!.room.decaySeconds).toBe(0.5);
	expect([...files.holders.keys()]).toEqual(['demo-copy']);

	// The next change goes into the same copy.
	press('r', 'decay 0.6', enter);
	expect([...files.kept.keys()]).toEqual(['demo', 'demo-copy']);
	expect(files.kept.get('demo-copy')!.room.decaySeconds).toBe(0.6);
});

test('what is to be carried in a demo’s room is written beside a copy, never beside the demo', () => {
	const demo = {...room(), name: 'Demo'};
	const {files, session, press} = begin(memoryFiles({demo}, ['demo']));
	press('p', 'p');
	expect([...files.written.keys()]).toEqual(['/memory/demo-copy-moves.txt']);
	expect(session.screen()).toMatchObject({kind: 'planning', file: 'demo-copy'});
	expect(files.kept.get('demo')).toEqual(demo);
});
