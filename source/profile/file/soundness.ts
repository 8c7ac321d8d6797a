import {generatedSchema} from './generatedSchema.ts';
import {schemaTest} from './json/schemaTest.ts';

let test: ((value: unknown) => boolean) | undefined;

/**
Whether a parsed file certainly fits the schema, told without loading the schema library. Where it is not certain (also
where the program runs from its source, without the generated schema) the whole schema has the word.
*/
export function isCertainlySound(file: unknown): boolean {
	test ??= generatedSchema ? schemaTest(generatedSchema) : () => false;
	return test(file);
}
