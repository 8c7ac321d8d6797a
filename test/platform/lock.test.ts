import {spawnSync} from 'node:child_process';
import fs from 'node:fs';
import {hostname, tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll, expect, test} from 'vitest';
import {lockPath, takeLock} from '../../source/platform/lock.ts';

const folder = fs.mkdtempSync(join(tmpdir(), 'lock-'));
afterAll(() => fs.rmSync(folder, {recursive: true, force: true}));
const now = new Date('2026-04-18T10:00:00Z');
const write = (path: string, holder: object | string) =>
	fs.writeFileSync(lockPath(path), typeof holder === 'string' ? holder : JSON.stringify(holder));

test('takeLock tells the second who holds the first, and gives way after release', () => {
	const path = join(folder, 'a.json');
	const first = takeLock(path, now);
	expect(first.kind).toBe('held-here');
	const second = takeLock(path, now);
	expect(second).toMatchObject({kind: 'held-elsewhere', holder: {pid: process.pid, host: hostname()}});
	if (second.kind === 'held-elsewhere')
		expect(second.text).toContain(`process ${process.pid} on ${hostname()}, since 2026-04-18 10:00 UTC`);
	if (first.kind === 'held-here') first.release();
	const third = takeLock(path, now);
	expect(third.kind).toBe('held-here');
	if (third.kind === 'held-here') third.release();
	expect(fs.readdirSync(folder)).toEqual([]);
});

test.each([
	['of a dead process', {pid: spawnSync('true').pid, host: hostname(), since: 'x'}],
	['of an earlier process with our own number', {pid: process.pid, host: hostname(), since: 'x'}],
	[
		'of an earlier process whose number a living one has now',
		{pid: process.ppid, host: hostname(), since: 'x', began: '1 another-boot'},
	],
	['that is empty', ''],
	['that is no lock at all', '[1, 2]'],
])('takeLock takes over a lock %s', (_, holder) => {
	const path = join(folder, 'stale.json');
	write(path, holder);
	const lock = takeLock(path, now);
	expect(lock.kind).toBe('held-here');
	if (lock.kind === 'held-here') lock.release();
});

test.each([
	['of a living process', {pid: process.ppid, host: hostname(), since: 'x'}],
	['of another machine, alive or not', {pid: 999_999, host: 'elsewhere', since: 'x'}],
])('takeLock leaves a lock %s alone', (_, holder) => {
	const path = join(folder, 'live.json');
	write(path, holder);
	expect(takeLock(path, now).kind).toBe('held-elsewhere');
	expect(JSON.parse(fs.readFileSync(lockPath(path), 'utf8'))).toEqual(holder);
});

test('a forced lock is taken from a living process, whose release then leaves it alone', () => {
	const path = join(folder, 'forced.json');
	const name = `${path}.open.lock`;
	const first = takeLock(path, now, {name});
	const second = takeLock(path, new Date('2026-04-18T11:00:00Z'), {name, isForced: true});
	expect([first.kind, second.kind]).toEqual(['held-here', 'held-here']);
	if (first.kind === 'held-here') first.release();
	expect(JSON.parse(fs.readFileSync(name, 'utf8'))).toMatchObject({since: '2026-04-18T11:00:00.000Z'});
});
