import {execFileSync, spawn} from 'node:child_process';
import fs from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {build} from 'esbuild';
import {afterAll, beforeAll, expect, test} from 'vitest';
import {createFile, replaceFile} from '../../source/platform/atomicWrite.ts';

const folder = fs.mkdtempSync(join(tmpdir(), 'atomic-'));
afterAll(() => fs.rmSync(folder, {recursive: true, force: true}));
const bytes = (text: string) => new TextEncoder().encode(text);
const litter = (place = folder) => fs.readdirSync(place).filter(name => /\.tmp$/.test(name));

test('replaceFile keeps the version before, and only that one', () => {
	const path = join(folder, 'a.json');
	const previous = join(folder, 'a.previous.json');
	for (const text of ['one', 'two', 'three']) replaceFile(path, bytes(text), previous);
	expect(fs.readFileSync(path, 'utf8')).toBe('three');
	expect(fs.readFileSync(previous, 'utf8')).toBe('two');
	expect(litter()).toEqual([]);
});

test('replaceFile keeps the permissions and follows a link', () => {
	const path = join(folder, 'mode.json');
	fs.writeFileSync(path, 'x', {mode: 0o600});
	const link = join(folder, 'link.json');
	fs.symlinkSync(path, link);
	replaceFile(link, bytes('y'));
	expect(fs.lstatSync(link).isSymbolicLink()).toBe(true);
	expect(fs.readFileSync(path, 'utf8')).toBe('y');
	expect(fs.statSync(path).mode & 0o777).toBe(0o600);
});

test('replaceFile writes on where the system takes only part of the bytes', () => {
	const path = join(folder, 'short.json');
	replaceFile(path, bytes('0123456789'), undefined, (descriptor, data, offset) =>
		fs.writeSync(descriptor, data, offset, Math.min(3, data.length - offset)),
	);
	expect(fs.readFileSync(path, 'utf8')).toBe('0123456789');
});

test('a write that fails half way leaves the old file, the previous version and no litter', () => {
	const path = join(folder, 'full.json');
	const previous = join(folder, 'full.previous.json');
	replaceFile(path, bytes('one'), previous);
	replaceFile(path, bytes('two'), previous);
	let calls = 0;
	const failing = (descriptor: number, data: Uint8Array, offset: number) => {
		if (calls++ > 0) throw Object.assign(new Error('no space left on device'), {code: 'ENOSPC'});
		return fs.writeSync(descriptor, data, offset, 2);
	};

	expect(() => replaceFile(path, bytes('three'), previous, failing)).toThrow('no space');
	expect(fs.readFileSync(path, 'utf8')).toBe('two');
	expect(fs.readFileSync(previous, 'utf8')).toBe('one');
	expect(litter()).toEqual([]);
});

test('createFile never writes over a file', () => {
	const path = join(folder, 'new.json');
	createFile(path, bytes('one'));
	expect(() => createFile(path, bytes('two'))).toThrow('EEXIST');
	expect(fs.readFileSync(path, 'utf8')).toBe('one');
	expect(litter()).toEqual([]);
});

const small = join(folder, 'small-disk');

/** A disk of 64 KiB, where this user may mount one; elsewhere the failing write above stands for it. */
function canMount(): boolean {
	try {
		fs.mkdirSync(small, {recursive: true});
		execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', small], {stdio: 'ignore'});
		return true;
	} catch {
		return false;
	}
}

const isMounted = canMount();
afterAll(() => {
	if (isMounted) execFileSync('umount', [small]);
});

test.skipIf(!isMounted)('replaceFile on a disk that is really full leaves the old file whole', () => {
	const path = join(small, 'a.json');
	replaceFile(path, bytes('x'.repeat(20_000)));
	expect(() => replaceFile(path, bytes('y'.repeat(60_000)), join(small, 'a.previous.json'))).toThrow(
		'ENOSPC',
	);
	expect(fs.readFileSync(path, 'utf8')).toBe('x'.repeat(20_000));
	expect(litter(small)).toEqual([]);
});

let script: string;
beforeAll(async () => {
	script = join(folder, 'saver.mjs');
	const source = `
		import {replaceFile} from ${JSON.stringify(join(import.meta.dirname, '../../source/platform/atomicWrite.ts'))};
		for (let count = 0; ; count++) {
			replaceFile(process.argv[2], new TextEncoder().encode(JSON.stringify({count, filler: 'x'.repeat(100_000)})), process.argv[2] + '.previous');
			if (count === 2) process.stdout.write('going');
		}`;
	await build({
		stdin: {contents: source, resolveDir: import.meta.dirname, loader: 'ts'},
		bundle: true,
		platform: 'node',
		format: 'esm',
		outfile: script,
	});
});

test('the file and the version before it are whole after kill -9 at any moment', async () => {
	const path = join(folder, 'killed.json');
	for (let round = 0; round < 8; round++) {
		const child = spawn(process.execPath, [script, path], {stdio: ['ignore', 'pipe', 'inherit']});
		await new Promise(resolve => child.stdout.once('data', resolve));
		await new Promise(resolve => setTimeout(resolve, 3 + round * 7));
		const ended = new Promise(resolve => child.once('exit', (_, signal) => resolve(signal)));
		child.kill('SIGKILL');
		expect(await ended).toBe('SIGKILL');
		for (const name of [path, `${path}.previous`]) {
			const {filler} = JSON.parse(fs.readFileSync(name, 'utf8')) as {filler: string};
			expect(filler).toHaveLength(100_000);
		}
	}
});
