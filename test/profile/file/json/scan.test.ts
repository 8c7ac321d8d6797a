import fc from 'fast-check';
import {expect, test} from 'vitest';
import {nestingOf} from '../../../../source/profile/file/json/nesting.ts';
import {lineAndColumn, scanJson} from '../../../../source/profile/file/json/scan.ts';

function isJson(text: string): boolean {
	try {
		JSON.parse(text);
		return true;
	} catch {
		return false;
	}
}

// The judge is the engine's own parser.
test('scanJson finds a fault exactly where JSON.parse refuses', () => {
	const pieces = fc.array(
		fc.constantFrom(
			'{',
			'}',
			'[',
			']',
			',',
			':',
			'"a"',
			'"',
			'\\',
			'1',
			'-',
			'0',
			'.5',
			'e3',
			'true',
			'null',
			' ',
			'\n',
			'\\u00e9',
			'\t',
		),
		{maxLength: 10},
	);
	fc.assert(
		fc.property(
			fc.oneof(
				pieces.map(parts => parts.join('')),
				fc.json(),
				fc.string(),
			),
			text => {
				expect(scanJson(text) === undefined).toBe(isJson(text));
			},
		),
		{seed: 8, numRuns: 8000},
	);
});

test('scanJson visits every value with its path', () => {
	const seen: string[] = [];
	scanJson('{"a": [1, {"b": null}], "c": "x"}', (path, offset) => seen.push(`${path.join('/')}@${offset}`));
	expect(seen).toEqual(['@0', 'a@6', 'a/0@7', 'a/1@10', 'a/1/b@16', 'c@29']);
});

test('placeOf counts lines and columns from 1', () => {
	expect(lineAndColumn('', 0)).toEqual({line: 1, column: 1});
	expect(lineAndColumn('ab\ncd\n', 4)).toEqual({line: 2, column: 2});
	expect(lineAndColumn('ab\ncd\n', 6)).toEqual({line: 3, column: 1});
});

function depthOf(value: unknown): number {
	return typeof value === 'object' && value !== null
		? 1 + Math.max(0, ...Object.values(value).map(depthOf))
		: 0;
}

test('nestingOf agrees with the depth of the parsed value', () => {
	fc.assert(
		fc.property(fc.json({maxDepth: 6}), fc.integer({min: 0, max: 6}), (text, most) => {
			expect(nestingOf(text, most).deepAt >= 0).toBe(depthOf(JSON.parse(text)) > most);
		}),
		{seed: 9, numRuns: 2000},
	);
});
