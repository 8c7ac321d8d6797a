import type {JsonSchema} from './json/schemaTest.ts';

/** The JSON Schema that the whole schema generates; the build writes it in. Nothing where the program runs from its source. */
export const generatedSchema: JsonSchema | undefined = undefined;
