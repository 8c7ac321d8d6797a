import fs from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {sweepFolder} from '../../source/platform/sweep.ts';

test('sweepFolder removes what killed saves left an hour ago, and nothing else', () => {
	const folder = fs.mkdtempSync(join(tmpdir(), 'sweep-'));
	onTestFinished(() => fs.rmSync(folder, {recursive: true, force: true}));
	const old = ['a.json.0123456789ab.tmp', 'a.json.lock.0123456789ab.tmp', 'a.previous.json.0123456789ab.tmp'];
	const kept = ['a.json', 'a.json.lock', 'a.previous.json', 'notes.tmp', 'a.json.short.tmp'];
	const now = new Date();
	for (const name of [...old, ...kept]) {
		fs.writeFileSync(join(folder, name), '');
		const twoHoursAgo = new Date(now.getTime() - 7_200_000);
		fs.utimesSync(join(folder, name), twoHoursAgo, twoHoursAgo);
	}

	fs.writeFileSync(join(folder, 'b.json.0123456789ab.tmp'), '');
	sweepFolder(folder, now);
	expect(fs.readdirSync(folder).sort()).toEqual([...kept, 'b.json.0123456789ab.tmp'].sort());
	sweepFolder(join(folder, 'none'), now);
});
