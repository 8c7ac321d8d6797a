import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {parseProfile, problemLines} from '../../../source/profile/file/parse.ts';
import {serialiseProfile} from '../../../source/profile/file/serialise.ts';
import {sampleProfile} from '../sample.ts';

const problemsOf = (input: Uint8Array | string) => {
	const parsed = parseProfile(input, 'file');
	return parsed.ok ? [] : problemLines(parsed.problems, 1000);
};

const bytes = (text: string) => new TextEncoder().encode(text);
const sampleText = serialiseProfile(sampleProfile());

describe('parseProfile says in words what is wrong with the file as a whole', () => {
	test.each([
		['an empty file', '', /^An empty file, expected a profile in JSON/],
		['blanks', ' \n ', /^An empty file/],
		['a binary file', Uint8Array.of(0x89, 0x50, 0, 0xff, 0), /^A binary file/],
		['text with a NUL', 'a\u0000b', /^A binary file/],
		['UTF-16', Uint8Array.of(0xff, 0xfe, 0x7b, 0), /UTF-16.*Save the file again as UTF-8/],
		[
			'broken UTF-8',
			Uint8Array.of(0x7b, 0x0a, 0x20, 0xc3, 0x28, 0x7d),
			/^line 2, column 2: Bytes that are not UTF-8/,
		],
		['a list', '[1]', /A list, expected an object/],
		['a number', '12', /Only 12, expected an object/],
		['null', 'null', /Only null, expected an object/],
		['text without JSON', 'hello', /^line 1, column 1: “hello”, expected a value/],
		['a missing comma', '{"a": 1\n "b": 2}', /^line 2, column 2: .*expected a comma or }/],
		['a trailing comma', '{"a": [1, 2,]}', /^line 1, column 13: “]”, expected a value/],
		['single quotes', "{'a': 1}", /expected a name in double quotes/],
		['a text over the end of a line', '{"a": "b\n"}', /the end of the line, expected the closing quote/],
		['NaN', '{"a": NaN}', /“NaN”, expected a value/],
		['two values', '{} {}', /expected nothing after the closing brace/],
		['nesting of 65', `{"a":${'['.repeat(64)}${']'.repeat(64)}}`, /Deeper nesting, expected at most 64/],
		['nesting of 200 000, unclosed', '['.repeat(200_000), /Deeper nesting/],
	])('%s', (_, input, words) => {
		const problems = problemsOf(input);
		expect(problems).toHaveLength(1);
		expect(problems[0]).toMatch(words);
	});

	test('every cut of a valid file', () => {
		for (let length = 0; length < sampleText.trimEnd().length; length += 7) {
			const problems = problemsOf(sampleText.slice(0, length));
			expect(problems).toHaveLength(1);
			expect(problems[0]).toMatch(
				length === 0 ? /empty/ : /line \d+, column \d+: the end of the file.*cut short/,
			);
		}
	});

	test('more than 64 MiB', () => {
		expect(problemsOf(new Uint8Array(64 * 1024 * 1024 + 1))[0]).toMatch(/expected at most 64 MiB/);
	});
});

test('parseProfile reads the sample, with and without a byte-order mark, and 64 levels of nesting', () => {
	expect(problemsOf(sampleText)).toEqual([]);
	expect(problemsOf(bytes(`\uFEFF${sampleText}`))).toEqual([]);
	expect(problemsOf(`\uFEFF${sampleText}`)).toEqual([]);
	const deep = sampleText.replace('"format": 1,', `"format": 1, "mine": ${'['.repeat(63)}${']'.repeat(63)},`);
	expect(problemsOf(deep)).toEqual([]);
});

test('parseProfile names all problems at once, each with its line', () => {
	const text = `{
	"format": 1,
	"name": "",
	"date": "18.4.2026",
	"room": {"name": "Loft", "widthMetres": "4"},
	"seats": [],
	"channels": [
		{"id": "FLL"},
		{"speaker": {}}
	],
	"tape": [
		{"from": "FL", "to": "sofa", "metres": -1},
		{"from": "FL", "to": "sofa", "metres": 1e999}
	],
	"settings": [{"id": "a", "origin": "found", "channels": {"FCC": {}}}]
}`;
	const problems = problemsOf(text);
	expect(problems).toEqual([
		'name, line 3: "", expected a text that is not empty. Check the value and its unit.',
		'date, line 4: "18.4.2026", expected a date like 2026-04-18. Correct it.',
		'room.widthMetres, line 5: "4", expected a number. Write the number without quotes, with a decimal point.',
		'seats, line 6: an empty list, expected at least 1 entry. Add what is missing.',
		'channels[0].id, line 8: "FLL", expected a known name. Did you mean FL?',
		'channels[1].id, line 9: nothing, expected a known name. Add it.',
		'tape[0].metres, line 12: -1, expected at least 0. Check the value and its unit.',
		'tape[1].metres, line 13: a number too large to hold, expected a number. Correct it.',
		'settings[0].channels.FCC, line 15: "FCC", expected a channel abbreviation. Correct the name, or take it out.',
	]);
});

test('parseProfile refuses a newer format and names both formats', () => {
	expect(problemsOf(sampleText.replace('"format": 1', '"format": 3'))).toEqual([
		'format, line 2: 3, expected format 1 or older. The file is in format 3, this program reads up to format 1. Take a newer version of the program.',
	]);
	expect(problemsOf('{"name": "x"}')[0]).toMatch(/^format, line 1: nothing, expected the format/);
});

test('problemLines counts what it does not print', () => {
	const parsed = parseProfile(sampleText.replaceAll('"metres": ', '"metres": -'), 'file');
	expect(parsed.ok).toBe(false);
	if (!parsed.ok) expect(problemLines(parsed.problems, 1).at(-1)).toBe('and 3 more');
});

test('keys named __proto__ set no prototype and are dropped', () => {
	const text = sampleText.replace(
		'"format": 1,',
		'"format": 1, "__proto__": {"polluted": 1}, "x": {"\\u005f_proto__": {"polluted": 1}},',
	);
	const parsed = parseProfile(text, 'file');
	expect(parsed.ok).toBe(true);
	if (!parsed.ok) return;
	expect((parsed.profile as Record<string, unknown>).polluted).toBeUndefined();
	expect(Object.hasOwn(parsed.profile, '__proto__')).toBe(false);
	expect(serialiseProfile(parsed.profile)).not.toContain('polluted');
	expect(({} as Record<string, unknown>).polluted).toBeUndefined();
});

test('parseProfile runs migrations before the schema and says where it came from', () => {
	// An artificial format 0 in which the name was called a title.
	const migrations = [
		{
			from: 0,
			to: 1,
			apply: ({title, ...rest}: Readonly<Record<string, unknown>>) => ({...rest, name: title}),
		},
	];
	const {name, ...rest} = sampleProfile();
	const old = JSON.stringify({...rest, format: 0, title: name});
	expect(parseProfile(old, 'file', {migrations})).toMatchObject({
		ok: true,
		migratedFrom: 0,
		profile: {...sampleProfile()},
	});
	expect(problemsOf(old)[0]).toMatch(/Nothing leads from format 0 to format 1/);
});

test('parseProfile never throws on any JSON or any bytes', () => {
	fc.assert(
		fc.property(fc.oneof(fc.json({maxDepth: 5}), fc.string({unit: 'binary'}), fc.uint8Array()), input => {
			const parsed = parseProfile(input, 'file');
			if (!parsed.ok) expect(parsed.problems.length).toBeGreaterThan(0);
		}),
		{seed: 5, numRuns: 3000},
	);
});

type Node = Record<string | number, unknown>;

function places(node: unknown, path: Array<string | number> = []): Array<Array<string | number>> {
	if (typeof node !== 'object' || node === null) return [path];
	const inner = Object.entries(node).flatMap(([key, value]) =>
		places(value, [...path, Array.isArray(node) ? Number(key) : key]),
	);
	return path.length === 0 ? inner : [path, ...inner];
}

test('a profile changed at any place is a profile or gives problems that name a place', () => {
	const all = places(sampleProfile());
	fc.assert(
		fc.property(
			fc.constantFrom(...all),
			fc.oneof(fc.jsonValue({maxDepth: 2}), fc.constant(undefined)),
			(path, value) => {
				const profile = sampleProfile();
				const parent = path.slice(0, -1).reduce<unknown>((node, key) => (node as Node)[key], profile) as Node;
				if (value === undefined) delete parent[path.at(-1)!];
				else parent[path.at(-1)!] = value;
				const parsed = parseProfile(JSON.stringify(profile), 'file');
				if (parsed.ok) return;
				for (const {path: place, expected, remedy} of parsed.problems) {
					expect(place.length * expected.length * remedy.length).toBeGreaterThan(0);
					expect(remedy).toMatch(/[.?]$/);
				}
			},
		),
		{seed: 6, numRuns: 3000},
	);
});
