/** The part of JSON Schema (draft 2020-12) that profile schemas use. */
export type JsonSchema = boolean | {readonly [keyword: string]: unknown};

type Test = (value: unknown) => boolean;
type Keyword = (argument: never, schema: Readonly<Record<string, unknown>>) => Test;

const anything: Test = () => true;

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
	typeof value === 'object' && value !== null && !Array.isArray(value);

const types: Readonly<Record<string, Test>> = {
	object: isObject,
	array: value => Array.isArray(value),
	string: value => typeof value === 'string',
	number: value => Number.isFinite(value),
	integer: value => Number.isSafeInteger(value),
	boolean: value => typeof value === 'boolean',
	null: value => value === null,
};

/** Keywords that only describe. `format` does so by default (draft 2020-12, 7.2.1); a pattern stands beside it. */
const silent: Keyword = () => anything;

/** Each makes a test that a value of another type passes, as the standard has it. */
const keywords: Readonly<Record<string, Keyword>> = {
	$schema: silent,
	title: silent,
	description: silent,
	format: silent,
	type: (name: string) => types[name] ?? unknown('type', name),
	const: (expected: unknown) => value => value === expected,
	enum: (choices: readonly unknown[]) => value => choices.includes(value),
	minimum: (limit: number) => value => typeof value !== 'number' || value >= limit,
	maximum: (limit: number) => value => typeof value !== 'number' || value <= limit,
	exclusiveMinimum: (limit: number) => value => typeof value !== 'number' || value > limit,
	exclusiveMaximum: (limit: number) => value => typeof value !== 'number' || value < limit,
	// The library counts UTF-16 units, the standard characters; both agree on what is no longer than the units allow.
	minLength: (limit: number) => value =>
		typeof value !== 'string' ||
		// A character is one unit or two: only between the two have they to be counted.
		value.length >= 2 * limit ||
		(value.length >= limit && [...value].length >= limit),
	maxLength: (limit: number) => value => typeof value !== 'string' || value.length <= limit,
	pattern: (source: string) => {
		const pattern = new RegExp(source);
		return value => typeof value !== 'string' || pattern.test(value);
	},
	minItems: (limit: number) => value => !Array.isArray(value) || value.length >= limit,
	maxItems: (limit: number) => value => !Array.isArray(value) || value.length <= limit,
	prefixItems: (schemas: readonly JsonSchema[]) => {
		const tests = schemas.map(schema => schemaTest(schema));
		return value =>
			!Array.isArray(value) || tests.every((test, index) => index >= value.length || test(value[index]));
	},
	items: (schema: JsonSchema, {prefixItems = []}) => {
		const test = schemaTest(schema);
		const first = (prefixItems as readonly unknown[]).length;
		return value => !Array.isArray(value) || value.every((item, index) => index < first || test(item));
	},
	required: (names: readonly string[]) => value =>
		!isObject(value) || names.every(name => Object.hasOwn(value, name)),
	properties: (schemas: Readonly<Record<string, JsonSchema>>) => {
		const tests = new Map(Object.entries(schemas).map(([name, schema]) => [name, schemaTest(schema)]));
		return value => {
			if (!isObject(value)) return true;
			// By the value's own few names, not by the many that a reading might have.
			for (const name in value) {
				if (Object.hasOwn(value, name) && tests.get(name)?.(value[name]) === false) return false;
			}

			return true;
		};
	},
	additionalProperties: (schema: JsonSchema, {properties = {}}) => {
		const test = schemaTest(schema);
		const named = new Set(Object.keys(properties as object));
		if (test === anything) return anything;
		return value =>
			!isObject(value) || Object.entries(value).every(([name, entry]) => named.has(name) || test(entry));
	},
	propertyNames: (schema: JsonSchema) => {
		const test = schemaTest(schema);
		return value => !isObject(value) || Object.keys(value).every(name => test(name));
	},
	anyOf: (schemas: readonly JsonSchema[]) => {
		const tests = schemas.map(schema => schemaTest(schema));
		return value => tests.some(test => test(value));
	},
	oneOf: (schemas: readonly JsonSchema[]) => {
		const tests = schemas.map(schema => schemaTest(schema));
		return value => tests.filter(test => test(value)).length === 1;
	},
};

/**
A test of values against a JSON Schema.

@param schema - Only the keywords above; a keyword that is not known is never passed over.
@returns Whether a value, as JSON holds it, is valid. Infinite numbers are not.
@throws {RangeError} If the schema has a keyword or type that is not known here.
@see JSON Schema draft 2020-12, Core (10) and Validation (6).
*/
export function schemaTest(schema: JsonSchema): Test {
	if (typeof schema === 'boolean') return () => schema;
	const tests = Object.entries(schema)
		.map(([name, argument]) => (keywords[name] ?? unknown('keyword', name))(argument as never, schema))
		.filter(test => test !== anything);
	return tests.length === 0 ? anything : value => tests.every(test => test(value));
}

function unknown(what: string, name: string): never {
	throw new RangeError(`JSON Schema ${what} “${name}” is not known here.`);
}
