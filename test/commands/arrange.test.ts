import {mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterEach, beforeEach, expect, test} from 'vitest';
import {command} from '../../source/commands/arrange.ts';

const demo = new URL('../fixtures/attic-2026.json', import.meta.url).pathname;
let folder = '';
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'roomtare-arrange-'));
});
afterEach(() => rmSync(folder, {recursive: true, force: true}));

async function run(flags: Record<string, unknown>, input = demo) {
	const printed: string[] = [];
	const said: string[] = [];
	const code = await command.run({
		input: [input],
		flags: {profiles: folder, ...flags},
		out: text => printed.push(text),
		say: text => said.push(text),
		isTerminal: false,
		columns: 80,
		readStandardInput: async () => new Uint8Array(),
		now: () => new Date('2026-06-01'),
	});
	return {code, text: printed.join('\n'), said: said.join('\n')};
}

test('a what-if is held against the room as it stands, in tape terms', async () => {
	const {code, text} = await run({move: ['seats=forward:30cm']});
	expect(code).toBe(0);
	expect(text).toContain('as it stands');
	expect(text).toMatch(/Sofa middle: to .* from the left wall, .* from the back wall/);
});

test('spots are ranked, the best first, and only a better one is carried', async () => {
	const {text} = await run({spots: 'screen-left,back-right,left-middle', sub: 'sub2', json: true});
	const {arrangements, moves} = JSON.parse(text);
	const [now, ...ranked] = arrangements;
	expect(now.kind).toBe('now');
	const means = ranked.map((one: {judged: {meanDb: number}}) => one.judged.meanDb);
	expect(means).toEqual([...means].sort((a, b) => a - b));
	if (ranked[0].against.certainty === 'none') expect(moves).toEqual([]);
});

test('a search keeps what it advises as the plan of a new profile', async () => {
	const {said} = await run({search: true, write: 'Attic planned'});
	expect(said).toContain('“Attic planned” holds the plan');
	const [file] = readdirSync(folder).filter(name => name.endsWith('.json'));
	const written = JSON.parse(readFileSync(join(folder, file!), 'utf8'));
	expect(written.planned.places.map(({id}: {id: string}) => id)).toContain('sub1');
});

test.each([
	[{spots: 'behind-me'}, 'is no spot. Expected one of screen-left'],
	[{spots: '9m/1m'}, 'lies outside the walls'],
	[{spots: 'screen-left', sub: 'sub9'}, 'expected one of sub1, sub2'],
	[{move: ['sofa=forward:30cm']}, '“sofa” cannot be moved here. Expected one of'],
	[{move: ['seats=forward:30cm'], search: true}, 'one question at a time'],
	[{seat: 'far'}, 'is no length'],
])('%j is refused with what was expected', async (flags, words) => {
	await expect(run(flags)).rejects.toThrow(words);
});

test('a thing moved through a wall is named, and nothing is judged', async () => {
	await expect(run({move: ['sub1=left:9m']})).rejects.toThrow(/would then stand outside the walls/);
});

/** The demo with other sizes, nothing taped. */
function changed(room: Record<string, unknown>, more: Record<string, unknown> = {}): string {
	const profile = JSON.parse(readFileSync(demo, 'utf8'));
	const path = join(folder, 'changed.json');
	const sizes = {name: 'Attic', widthMetres: 4, lengthMetres: 6, ceiling: {kind: 'flat', heightMetres: 2.4}};
	writeFileSync(path, JSON.stringify({...profile, tape: [], room: {...sizes, ...room}, ...more}));
	return path;
}

test.each([
	[{widthMetres: 1000}, {}, 'The width is 1000.00 m'],
	[
		{missingCorner: {corner: 'backLeft', widthMetres: 9, lengthMetres: 2}},
		{},
		'width of the missing corner is 9.00 m',
	],
	[
		{ceiling: {kind: 'flat', heightMetres: 1.3}},
		{planned: {places: [{id: 'middle', xMetres: 2, yMetres: 3, zMetres: 1.5}]}},
		'above the ceiling',
	],
	[{}, {planned: {places: [{id: 'sub1', xMetres: 9, yMetres: 3, zMetres: 0.2}]}}, 'outside the walls'],
	[
		{features: [{on: 'wall:left', kind: 'door', fromMetres: 1, toMetres: 9}]},
		{},
		'reaches to 9.00 m, beyond its wall',
	],
	[
		{
			features: [{on: 'floor', kind: 'walkway', leftMetres: 0, rightMetres: 4, nearMetres: 0, farMetres: 6}],
		},
		{},
		'no wall is free for a subwoofer',
	],
])('a room that cannot be gets a sentence: %j', async (room, more, said) => {
	const {code, text} = await run({}, changed(room, more));
	expect(code).toBe(1);
	expect(text.replace(/\s+/g, ' ').toLowerCase()).toContain(said.toLowerCase());
});
