import {spawn} from 'node:child_process';
import fs from 'node:fs';
import {hostname, tmpdir} from 'node:os';
import {join} from 'node:path';
import {build} from 'esbuild';
import {afterAll, beforeEach, expect, test, vi} from 'vitest';
import {lockPath, takeLock} from '../../../source/platform/lock.ts';
import {listProfiles} from '../../../source/platform/profiles/list.ts';
import {readProfileFile} from '../../../source/platform/profiles/read.ts';
import {createProfileFile, saveProfile} from '../../../source/platform/profiles/save.ts';
import {Trouble} from '../../../source/platform/trouble.ts';
import {parseProfile} from '../../../source/profile/file/parse.ts';
import {sampleProfile} from '../../profile/sample.ts';

const folder = fs.mkdtempSync(join(tmpdir(), 'save-'));
afterAll(() => fs.rmSync(folder, {recursive: true, force: true}));
const path = join(folder, 'room.json');
beforeEach(() => {
	fs.rmSync(path, {force: true});
	createProfileFile(path, sampleProfile());
});

const changed = (name: string) => ({...sampleProfile(), name});

function troubleOf(action: () => unknown): readonly string[] {
	try {
		action();
	} catch (error) {
		if (error instanceof Trouble) return error.problems;
		throw error;
	}

	return [];
}

test('saveProfile saves on its own mark, and keeps the version before', () => {
	const mark = readProfileFile(path).mark();
	const saved = saveProfile(path, changed('two'), mark);
	expect(saved).toEqual({kind: 'saved', mark: readProfileFile(path).mark()});
	expect(JSON.parse(fs.readFileSync(join(folder, 'room.previous.json'), 'utf8')).name).toBe('Sample');
});

test('saveProfile tells of a change by another program and overwrites nothing', () => {
	const mark = readProfileFile(path).mark();
	saveProfile(path, changed('theirs'), mark);
	expect(saveProfile(path, changed('mine'), mark)).toMatchObject({
		kind: 'changed-elsewhere',
		text: expect.stringContaining('Nothing was overwritten'),
	});
	expect(JSON.parse(fs.readFileSync(path, 'utf8')).name).toBe('theirs');
	fs.rmSync(path);
	expect(saveProfile(path, changed('mine'), mark)).toMatchObject({
		kind: 'changed-elsewhere',
		text: expect.stringContaining('removed'),
	});
	expect(fs.existsSync(path)).toBe(false);
});

test('saving the same content again keeps the version before', () => {
	const first = saveProfile(path, changed('two'), readProfileFile(path).mark());
	if (first.kind === 'saved') saveProfile(path, changed('two'), first.mark);
	expect(JSON.parse(fs.readFileSync(join(folder, 'room.previous.json'), 'utf8')).name).toBe('Sample');
});

test('saveProfile tells who is saving, and saves once that is over', () => {
	const mark = readProfileFile(path).mark();
	const lock = takeLock(path, new Date());
	expect(saveProfile(path, changed('two'), mark)).toMatchObject({kind: 'held-elsewhere'});
	if (lock.kind === 'held-here') lock.release();
	expect(saveProfile(path, changed('two'), mark)).toMatchObject({kind: 'saved'});
});

test.each([
	['of another machine, more than a minute old', {pid: 1, host: 'elsewhere', since: '2026-04-18T10:00:00Z'}],
	['of a living process, more than a minute old', {pid: 1, host: hostname(), since: '2026-04-18T10:00:00Z'}],
])('a lock %s keeps no save away', (_, holder) => {
	fs.writeFileSync(lockPath(path), JSON.stringify(holder));
	const mark = readProfileFile(path).mark();
	expect(saveProfile(path, changed('two'), mark)).toMatchObject({kind: 'saved'});
	expect(fs.existsSync(lockPath(path))).toBe(false);
});

test('a forced save breaks the lock of another machine, and keeps what another program wrote under a name that stays', () => {
	const mark = readProfileFile(path).mark();
	const nameIn = (file: string) => JSON.parse(fs.readFileSync(join(folder, file), 'utf8')).name as string;
	for (const [theirs, other] of [
		['theirs', 'room.other.json'],
		['theirs again', 'room.other-2.json'],
	] as const) {
		saveProfile(path, changed(theirs), undefined);
		const holder = {pid: 1, host: 'elsewhere', since: new Date().toISOString()};
		fs.writeFileSync(lockPath(path), JSON.stringify(holder));
		expect(saveProfile(path, changed('mine'), mark)).toMatchObject({kind: 'held-elsewhere'});
		expect(saveProfile(path, changed('mine'), mark, {isForced: true})).toMatchObject({
			kind: 'saved',
			otherPath: join(folder, other),
		});
		expect(nameIn('room.json')).toBe('mine');
		expect(nameIn(other)).toBe(theirs);
	}

	saveProfile(path, changed('mine, later'), undefined);
	saveProfile(path, changed('mine, last'), undefined);
	expect(nameIn('room.other.json')).toBe('theirs');
	expect(listProfiles(folder).map(({id}) => id)).not.toContain('room.other');
});

test('a full disk leaves no temporary file of the lock', () => {
	const {writeFileSync} = fs;
	vi.spyOn(fs, 'writeFileSync').mockImplementation((file, _content, options) => {
		writeFileSync(file, '', options);
		throw Object.assign(new Error('x'), {code: 'ENOSPC'});
	});
	try {
		expect(troubleOf(() => saveProfile(path, changed('two'), undefined))[0]).toContain('the disk is full');
	} finally {
		vi.restoreAllMocks();
	}

	expect(fs.readdirSync(folder).filter(name => name.endsWith('.tmp'))).toEqual([]);
});

test('saveProfile never writes what could not be read again', () => {
	const unsound = {...sampleProfile(), seats: []};
	expect(saveProfile(path, unsound, undefined)).toMatchObject({
		kind: 'unsound',
		problems: [expect.stringMatching(/^seats: an empty list/)],
	});
	const problems = troubleOf(() => createProfileFile(join(folder, 'unsound.json'), unsound));
	expect(problems[0]).toMatch(/was not saved/);
	expect(problems[1]).toMatch(/^seats: an empty list/);
	expect(parseProfile(readProfileFile(path).bytes, path).ok).toBe(true);
});

test('createProfileFile refuses to overwrite, and makes missing folders', () => {
	expect(troubleOf(() => createProfileFile(path, changed('two')))).toEqual([
		`${path} exists already. Choose another name; nothing was overwritten.`,
	]);
	createProfileFile(join(folder, 'deep/er/a.json'), sampleProfile());
	expect(fs.existsSync(join(folder, 'deep/er/a.json'))).toBe(true);
});

test('trouble of the disk comes in words, with the path and a remedy', () => {
	const full = () => {
		throw Object.assign(new Error('x'), {code: 'ENOSPC'});
	};
	expect(troubleOf(() => saveProfile(path, changed('two'), undefined, {write: full}))).toEqual([
		`${path} does not fit: the disk is full. Make room and save again; the old version stands.`,
	]);
	expect(JSON.parse(fs.readFileSync(path, 'utf8')).name).toBe('Sample');
	// A file in place of the folder: refused for every user, root too.
	expect(troubleOf(() => createProfileFile(join(path, 'a.json'), sampleProfile()))[0]).toMatch(
		/ (has a file where a folder should be|exists already)\. /,
	);
	// A folder that nobody may write in, root neither.
	expect(troubleOf(() => createProfileFile('/proc/roomtare/a.json', sampleProfile()))[0]).toMatch(
		/^\/proc\/roomtare .*\. .*\.$/,
	);
	expect(troubleOf(() => readProfileFile(join(folder, 'none.json')))[0]).toMatch(/none\.json does not exist/);
	expect(troubleOf(() => readProfileFile(folder))[0]).toMatch(/is a folder, not a file/);
});

test('two programs that save the same file at once lose no accepted reading', async () => {
	const script = join(folder, 'writer.mjs');
	const source = `
		import {readProfileFile} from '../../../source/platform/profiles/read.ts';
		import {saveProfile} from '../../../source/platform/profiles/save.ts';
		import {parseProfile} from '../../../source/profile/file/parse.ts';
		const [, , path, who] = process.argv;
		for (let count = 0; count < 15; ) {
			const {bytes, mark} = readProfileFile(path);
			const {profile} = parseProfile(bytes, path);
			profile.tape.push({from: 'sofa', to: 'FL', metres: count, note: who});
			if (saveProfile(path, profile, mark()).kind === 'saved') count++;
		}`;
	await build({
		stdin: {contents: source, resolveDir: import.meta.dirname, loader: 'ts'},
		bundle: true,
		platform: 'node',
		format: 'esm',
		outfile: script,
	});
	const run = (who: string) =>
		new Promise<number | null>(resolve =>
			spawn(process.execPath, [script, path, who], {stdio: 'inherit'}).once('exit', resolve),
		);
	expect(await Promise.all([run('one'), run('two')])).toEqual([0, 0]);
	const parsed = parseProfile(readProfileFile(path).bytes, path);
	expect(parsed.ok).toBe(true);
	if (!parsed.ok) return;
	for (const who of ['one', 'two']) {
		const lengths = parsed.profile.tape!.filter(({note}) => note === who).map(({metres}) => metres);
		expect(lengths).toEqual(Array.from({length: 15}, (_, index) => index));
	}
});
