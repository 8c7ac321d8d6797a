import fc from 'fast-check';
import {expect, test} from 'vitest';
import {duplicateKey} from '../../../../source/profile/file/json/duplicateKey.ts';
import {nestingOf} from '../../../../source/profile/file/json/nesting.ts';
import {parseProfile} from '../../../../source/profile/file/parse.ts';

const found = (text: string) => duplicateKey(text, nestingOf(text, 64).names, JSON.parse(text));

test('duplicateKey finds a name that stands twice in one object, and where', () => {
	expect(found('{"a": 1, "b": [{"c": 1, "c": 2}]}')).toEqual({path: ['b', 0, 'c'], offset: 29});
	expect(found('{"a": 1, "\\u0061": 2}')?.path).toEqual(['a']);
	expect(found('{"__proto__": 1, "__proto__": 2}')?.path).toEqual(['__proto__']);
});

test.each([
	'{"a": {"b": 1}, "c": {"b": 1}}',
	'[{"a": 1}, {"a": 1}]',
	'{"a": "b\\": 1", "\\\\": "\\\\"}',
	'1',
])('duplicateKey finds nothing in %s', text => {
	expect(found(text)).toBeUndefined();
});

test('duplicateKey never finds anything in what JSON.stringify writes', () => {
	fc.assert(
		fc.property(fc.jsonValue(), value => {
			expect(found(JSON.stringify(value))).toBeUndefined();
		}),
	);
});

test('a profile with a name twice is refused with its line', () => {
	const parsed = parseProfile('{\n"format": 1,\n"name": "a",\n"name": "b"\n}', 'x');
	expect(parsed.ok).toBe(false);
	if (!parsed.ok)
		expect(parsed.problems).toMatchObject([{path: 'name', line: 4, expected: 'each name once'}]);
});
