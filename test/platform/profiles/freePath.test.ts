import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {basename, dirname, join} from 'node:path';
import {expect, test} from 'vitest';
import {freePath} from '../../../source/platform/profiles/freePath.ts';

test('a new file never takes the place of one that stands there', () => {
	const folder = mkdtempSync(join(tmpdir(), 'free-path-'));
	try {
		const first = freePath(folder, 'Den 2026');
		expect(dirname(first)).toBe(folder);
		writeFileSync(first, '');
		const second = freePath(folder, 'Den 2026');
		writeFileSync(second, '');
		const third = freePath(folder, 'Den 2026');
		const stem = basename(first, '.json');
		expect([second, third].map(path => basename(path))).toEqual([`${stem}-2.json`, `${stem}-3.json`]);
	} finally {
		rmSync(folder, {recursive: true});
	}
});
