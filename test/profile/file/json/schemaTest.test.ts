import {readFileSync} from 'node:fs';
import {Ajv2020} from 'ajv/dist/2020.js';
import fc from 'fast-check';
import {expect, test} from 'vitest';
import {type JsonSchema, schemaTest} from '../../../../source/profile/file/json/schemaTest.ts';
import {profileJsonSchema} from '../../../../source/profile/file/jsonSchema.ts';
import {profileSchema} from '../../../../source/profile/schema/profile.ts';

const schema = profileJsonSchema();
const fits = schemaTest(schema as JsonSchema);
const byAjv = new Ajv2020({strict: false, validateFormats: false}).compile(schema);
const demoText = readFileSync(new URL('../../../fixtures/attic-2026.json', import.meta.url), 'utf8');

/** Every place in a JSON value, as a path. */
function placesOf(
	value: unknown,
	path: ReadonlyArray<string | number> = [],
): Array<ReadonlyArray<string | number>> {
	if (typeof value !== 'object' || value === null) return [path];
	const entries = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
	// Long lists of readings are alike; the first few stand for all.
	return [path, ...entries.slice(0, 40).flatMap(([key, inner]) => placesOf(inner, [...path, key]))];
}

const places = placesOf(JSON.parse(demoText)).filter(path => path.length > 0);

function withChange(
	path: ReadonlyArray<string | number>,
	change: 'drop' | {readonly value: unknown},
): unknown {
	const file = JSON.parse(demoText);
	let parent = file;
	for (const key of path.slice(0, -1)) parent = parent[key];
	const last = path.at(-1)!;
	if (change === 'drop' && !Array.isArray(parent)) delete parent[last];
	else parent[last] = change === 'drop' ? null : change.value;
	return file;
}

test('`schemaTest` refuses keywords and types that it does not know', () => {
	expect(() => schemaTest({dependentRequired: {}})).toThrow('keyword “dependentRequired”');
	expect(() => schemaTest({properties: {a: {type: 'date'}}})).toThrow('type “date”');
});

test.each<[JsonSchema, unknown, boolean]>([
	[true, undefined, true],
	[false, 1, false],
	[{}, null, true],
	[{type: 'number'}, Number.POSITIVE_INFINITY, false],
	[{type: 'object'}, [], false],
	[{type: 'object'}, null, false],
	[{required: ['toString']}, {}, false],
	[{properties: {constructor: {type: 'string'}}}, {}, true],
	[{exclusiveMinimum: 0}, 0, false],
	[{minimum: 0}, -0, true],
	[{maxLength: 1}, 'é', true],
	[{minLength: 2}, '𝄞', false],
	[{prefixItems: [{type: 'number'}], items: false}, [1, 2], false],
	[{oneOf: [{type: 'number'}, {minimum: 0}]}, 1, false],
	[{anyOf: [{type: 'string'}, {const: 3}]}, 3, true],
	[{propertyNames: {enum: ['a']}}, {b: 1}, false],
	[{properties: {a: {}}, additionalProperties: {type: 'number'}}, {a: '', b: 1}, true],
])('`schemaTest(%j)` of %j is %s', (keywords, value, isFit) => {
	expect(schemaTest(keywords)(value)).toBe(isFit);
});

test('the demo fits', () => {
	expect(fits(JSON.parse(demoText))).toBe(true);
});

// Ajv is another implementation of the standard; the schema library is what words the problems. What is called
// certainly sound must be sound to both, or a broken file would pass without a word.
test('on changed profiles `schemaTest` agrees with Ajv, and never passes what the whole schema refuses', () => {
	const values = fc.oneof(
		fc.constantFrom<unknown>(
			null,
			true,
			'',
			'x',
			'FL',
			'wall:left',
			'2026-02-30',
			-1,
			0,
			0.5,
			1e7,
			[],
			{},
			[1],
			{kind: 'flat'},
		),
		fc.jsonValue({maxDepth: 2}),
	);
	let passed = 0;
	fc.assert(
		fc.property(fc.constantFrom(...places), fc.option(values, {nil: undefined}), (path, value) => {
			const file = withChange(path, value === undefined ? 'drop' : {value});
			const isFit = fits(file);
			if (isFit) passed++;
			expect(isFit).toBe(byAjv(file));
			if (isFit) expect(profileSchema.safeParse(file).success).toBe(true);
		}),
		{seed: 11, numRuns: 1500},
	);
	expect(passed).toBeGreaterThan(50);
	expect(passed).toBeLessThan(1450);
});
