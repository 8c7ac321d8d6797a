import {existsSync, mkdtempSync, readFileSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {removeProfileFile, restoreProfileFile} from '../../../source/platform/profiles/remove.ts';

const folder = () => mkdtempSync(join(tmpdir(), 'roomtare-'));

test('a profile is moved to the folder of deleted ones, and comes back byte for byte', () => {
	const path = join(folder(), 'den.json');
	writeFileSync(path, '{"name": "Den"}');
	const {removed} = removeProfileFile(path);
	expect(existsSync(path)).toBe(false);
	expect(readFileSync(removed, 'utf8')).toBe('{"name": "Den"}');
	expect(restoreProfileFile(removed)).toBe(path);
	expect(readFileSync(path, 'utf8')).toBe('{"name": "Den"}');
});

test('neither way anything is overwritten', () => {
	const path = join(folder(), 'den.json');
	writeFileSync(path, 'first');
	const first = removeProfileFile(path).removed;
	writeFileSync(path, 'second');
	const second = removeProfileFile(path).removed;
	expect([readFileSync(first, 'utf8'), readFileSync(second, 'utf8')]).toEqual(['first', 'second']);
	writeFileSync(path, 'third');
	expect(restoreProfileFile(first)).not.toBe(path);
	expect(readFileSync(path, 'utf8')).toBe('third');
});
