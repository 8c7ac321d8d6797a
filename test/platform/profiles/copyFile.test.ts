import fs from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterEach, beforeEach, expect, test} from 'vitest';
import {copyProfileFile, untouchedCopy} from '../../../source/platform/profiles/copyFile.ts';

let folder: string;
let mine: string;
let original: string;
beforeEach(() => {
	folder = fs.mkdtempSync(join(tmpdir(), 'copy-'));
	mine = join(folder, 'mine');
	original = join(folder, 'demo.json');
	fs.writeFileSync(original, '{"name": "Demo", "tape": [{"metres": 2}]}\n');
});
afterEach(() => fs.rmSync(folder, {recursive: true, force: true}));

test('`copyProfileFile` copies byte for byte, numbered where a file stands already', () => {
	const first = copyProfileFile(original, mine);
	const second = copyProfileFile(original, mine);
	expect([first.path, second.path]).toEqual([join(mine, 'demo.json'), join(mine, 'demo-2.json')]);
	expect(fs.readFileSync(second.path, 'utf8')).toBe(fs.readFileSync(original, 'utf8'));
});

test('`untouchedCopy` finds a copy that was only walked through', () => {
	expect(untouchedCopy(original, mine)).toBeUndefined();
	const {path} = copyProfileFile(original, mine);
	fs.writeFileSync(path, '{"walk": {"prompt": "keep"}, "tape": [{"metres": 2}], "name": "Demo"}');
	expect(untouchedCopy(original, mine)?.path).toBe(path);
});

test('`untouchedCopy` passes over copies with entries of their own, and files that are no profile', () => {
	fs.mkdirSync(mine);
	fs.writeFileSync(join(mine, 'demo.json'), '{"name": "Demo", "tape": []}');
	fs.writeFileSync(join(mine, 'demo-2.json'), 'scribble');
	expect(untouchedCopy(original, mine)).toBeUndefined();
	fs.copyFileSync(original, join(mine, 'demo-3.json'));
	expect(untouchedCopy(original, mine)?.path).toBe(join(mine, 'demo-3.json'));
});

test('`untouchedCopy` never gives a profile back as the copy of itself', () => {
	expect(untouchedCopy(original, folder)).toBeUndefined();
});
