import {type JsonSchema, schemaTest} from './json/schemaTest.ts';

/** Written in by the build: the JSON Schema that the whole schema generates. */
declare const ROOMTARE_PROFILE_SCHEMA: JsonSchema | undefined;

let test: ((value: unknown) => boolean) | undefined;

/**
Whether a parsed file certainly fits the schema, told without loading the schema library. Where it is not certain (also
where the program runs from its source, without the generated schema) the whole schema has the word.
*/
export function isCertainlySound(file: unknown): boolean {
	test ??= typeof ROOMTARE_PROFILE_SCHEMA === 'object' ? schemaTest(ROOMTARE_PROFILE_SCHEMA) : () => false;
	return test(file);
}
