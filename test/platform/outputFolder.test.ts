import fs from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterEach, beforeEach, expect, test} from 'vitest';
import {outputFolder} from '../../source/platform/outputFolder.ts';

let folder: string;
beforeEach(() => {
	folder = fs.mkdtempSync(join(tmpdir(), 'roomtare-output-'));
});
afterEach(() => fs.rmSync(folder, {recursive: true, force: true}));

test('outputFolder makes a missing folder and writes a file', () => {
	const made = join(folder, 'a', 'b');
	outputFolder(made, ['x'], false)('x', Uint8Array.of(1, 2));
	expect([...fs.readFileSync(join(made, 'x'))]).toEqual([1, 2]);
});

test('outputFolder refuses when any file stands there, before one is written', () => {
	fs.writeFileSync(join(folder, 'b'), 'mine');
	expect(() => outputFolder(folder, ['a', 'b'], false)).toThrow(
		/b exist already; nothing was written.*--force/,
	);
	expect(fs.readdirSync(folder)).toEqual(['b']);
});

test('outputFolder replaces files only where told to', () => {
	fs.writeFileSync(join(folder, 'b'), 'old');
	outputFolder(folder, ['b'], true)('b', Buffer.from('new'));
	expect(fs.readFileSync(join(folder, 'b'), 'utf8')).toBe('new');
});

test('outputFolder leaves a file alone that came to be after the check, and no temporary file', () => {
	const write = outputFolder(folder, ['b'], false);
	fs.writeFileSync(join(folder, 'b'), 'mine');
	expect(() => write('b', Buffer.from('new'))).toThrow(/b exists already/);
	expect(fs.readFileSync(join(folder, 'b'), 'utf8')).toBe('mine');
	expect(fs.readdirSync(folder)).toEqual(['b']);
});

test('outputFolder says in words that a file stands where the folder should', () => {
	fs.writeFileSync(join(folder, 'plain'), '');
	expect(() => outputFolder(join(folder, 'plain'), ['a'], false)).toThrow(/plain/);
});
