import {expect, test} from 'vitest';
import {arriveLines} from '../../../source/ui/hearing/lines.ts';
import {pressesOf} from '../../../source/ui/keys/press.ts';
import type {Recordings} from '../../../source/ui/recordings.ts';
import {startSession} from '../../../source/ui/session.ts';
import {eveningProfile} from '../../study/hearing/simulated/evening.ts';
import {memoryFiles} from '../memoryFiles.ts';
import {memoryRecordings, watched} from '../memoryRecordings.ts';

test('a folder that is not there is said so once, and is watched as soon as it is', () => {
	let isThere = false;
	const memory = memoryRecordings();
	const recordings: Recordings = {
		...memory,
		look: folder => (isThere ? memory.look(folder) : undefined),
	};
	const now = () => new Date('2026-04-18T20:00:00Z');
	const files = memoryFiles({cellar: {...eveningProfile(), walk: {prompt: 'bass'}}});
	const session = startSession({files, recordings, now}, 'cellar');
	for (let count = 0; count < 2; count++) session.press(pressesOf('\r', {return: true}));
	const said = () => {
		const screen = session.screen();
		if (screen.kind !== 'hearing') throw new Error(`at ${screen.kind}`);
		const notes = screen.hearing.note ? [screen.hearing.note.text] : [];
		return [...arriveLines(screen.hearing, 200, now()).map(({text}) => text), ...notes];
	};
	const aboutFolder = () => said().filter(line => line.includes(watched));
	session.look();
	expect(aboutFolder()).toEqual([expect.stringContaining('not there')]);
	expect(said().join(' ')).not.toContain('Nothing lies there');

	isThere = true;
	session.look();
	expect(aboutFolder()).toEqual([expect.stringContaining('Watching')]);
	memory.arrive('evening.wav', new Uint8Array(44));
	session.look();
	session.look();
	expect(memory.orders).toHaveLength(1);
});
