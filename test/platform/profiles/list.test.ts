import fs from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll, expect, test} from 'vitest';
import {findProfile} from '../../../source/platform/profiles/find.ts';
import {listProfiles} from '../../../source/platform/profiles/list.ts';
import {createProfileFile} from '../../../source/platform/profiles/save.ts';
import {sampleProfile} from '../../profile/sample.ts';

const folder = fs.mkdtempSync(join(tmpdir(), 'list-'));
afterAll(() => fs.rmSync(folder, {recursive: true, force: true}));
const add = (id: string, name: string, date: string) =>
	createProfileFile(join(folder, `${id}.json`), {...sampleProfile(), name, date});
add('old', 'Loft', '2024-01-01');
add('new', 'Loft', '2026-01-01');
add('den', 'The Den', '2025-01-01');
fs.writeFileSync(join(folder, 'broken.json'), '{');
fs.writeFileSync(join(folder, 'other.json'), '{"a": 1}');
for (const name of ['new.previous.json', 'new.json.lock', 'notes.txt', '.hidden.json'])
	fs.writeFileSync(join(folder, name), 'x');

test('listProfiles gives none for a folder that is not there, and trouble for a file', () => {
	expect(listProfiles(join(folder, 'none'))).toEqual([]);
	expect(() => listProfiles(join(folder, 'old.json'))).toThrow('has a file where a folder should be');
});

test('listProfiles lists profiles newest first, unreadable ones last, and no other files', () => {
	expect(listProfiles(folder).map(({id, summary, problem}) => [id, summary?.date ?? problem])).toEqual([
		['new', '2026-01-01'],
		['den', '2025-01-01'],
		['old', '2024-01-01'],
		['broken', 'not JSON'],
		['other', 'not a profile'],
	]);
});

test.each([['den'], ['den.json'], ['The Den'], ['the den']])('findProfile finds the den by %s', word => {
	expect(findProfile(word, [folder])).toBe(join(folder, 'den.json'));
});

test('findProfile takes a path, refuses what fits several, and suggests near names', () => {
	expect(findProfile(join(folder, 'other.json'), [])).toBe(join(folder, 'other.json'));
	expect(() => findProfile('Loft', [folder])).toThrow('fits several profiles: new, old.');
	expect(() => findProfile('dne', [folder])).toThrow('Did you mean den?');
	expect(() => findProfile('none/at/all.json', [folder])).toThrow('none/at/all.json does not exist');
	expect(() => findProfile('x', [join(folder, 'none')])).toThrow('There is none yet');
});

test('findProfile looks through the folders in their order', () => {
	const second = fs.mkdtempSync(join(tmpdir(), 'list-'));
	createProfileFile(join(second, 'den.json'), sampleProfile());
	createProfileFile(join(second, 'shed.json'), sampleProfile());
	expect(findProfile('den', [folder, second])).toBe(join(folder, 'den.json'));
	expect(findProfile('shed', [folder, second])).toBe(join(second, 'shed.json'));
	fs.rmSync(second, {recursive: true});
});
