import {spawnSync} from 'node:child_process';
import fs from 'node:fs';
import {hostname, tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll, expect, test} from 'vitest';
import {takeLock} from '../../../source/platform/lock.ts';
import {holdProfile} from '../../../source/platform/profiles/hold.ts';

const folder = fs.mkdtempSync(join(tmpdir(), 'hold-'));
afterAll(() => fs.rmSync(folder, {recursive: true, force: true}));
const now = new Date('2026-04-18T10:00:00Z');

test('`holdProfile` tells who has a profile open, and keeps nobody from saving it', () => {
	const path = join(folder, 'a.json');
	expect(holdProfile(path, now).kind).toBe('held-here');
	expect(holdProfile(path, now)).toMatchObject({
		kind: 'held-elsewhere',
		text: `${path} is open in another roomtare (process ${process.pid} on ${hostname()}, since 2026-04-18 10:00 UTC).`,
	});
	expect(takeLock(path, now).kind).toBe('held-here');
});

test('`holdProfile` takes over the mark of a killed process, and any mark when forced', () => {
	const path = join(folder, 'b.json');
	const mark = `${path}.open.lock`;
	fs.writeFileSync(mark, JSON.stringify({pid: spawnSync('true').pid, host: hostname(), since: 'x'}));
	expect(holdProfile(path, now).kind).toBe('held-here');
	fs.writeFileSync(mark, JSON.stringify({pid: 1, host: 'elsewhere', since: 'x'}));
	expect(holdProfile(path, now).kind).toBe('held-elsewhere');
	expect(holdProfile(path, now, true).kind).toBe('held-here');
	expect(JSON.parse(fs.readFileSync(mark, 'utf8')).pid).toBe(process.pid);
});

test('`holdProfile` gives trouble where no mark can be written', () => {
	expect(() => holdProfile(join(folder, 'missing/c.json'), now)).toThrow();
});
