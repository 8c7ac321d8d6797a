import {mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {writeBeside} from '../../../source/platform/profiles/writeBeside.ts';
import {Trouble} from '../../../source/platform/trouble.ts';

function folder(): string {
	const path = mkdtempSync(join(tmpdir(), 'roomtare-beside-'));
	onTestFinished(() => rmSync(path, {recursive: true, force: true}));
	return path;
}

test('`writeBeside` names the file after the profile and never overwrites one', () => {
	const home = folder();
	const profile = join(home, 'attic-2026.json');
	const paths = ['one', 'two'].map(text => writeBeside(profile, '-door.html', text));
	expect(paths).toEqual([join(home, 'attic-2026-door.html'), join(home, 'attic-2026-door-2.html')]);
	expect(paths.map(path => readFileSync(path, 'utf8'))).toEqual(['one', 'two']);
	expect(readdirSync(home)).toHaveLength(2);
});

test('`writeBeside` says in words what the folder refuses', () => {
	const file = join(folder(), 'file');
	writeFileSync(file, '');
	expect(() => writeBeside(join(file, 'attic.json'), '-door.txt', 'x')).toThrow(Trouble);
});
