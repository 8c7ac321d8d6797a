import {build} from 'esbuild';

/** The JSON Schema of profiles, computed from the one in the source, so that what is shipped or tested cannot be an older one. */
export const profileSchemaOf = async root =>
	(await loaded(root, 'source/profile/file/jsonSchema.ts')).profileJsonSchema();

/** The order of the keys in a file, computed from the schema in the source. */
export const keyOrderOf = async root => (await loaded(root, 'source/profile/file/keyOrder.ts')).keyOrder;

async function loaded(root, file) {
	const {outputFiles} = await build({
		absWorkingDir: root,
		entryPoints: [file],
		bundle: true,
		platform: 'node',
		format: 'esm',
		write: false,
		logLevel: 'warning',
	});
	return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`);
}

/** The module that hands the program its generated schema, as text; the words for people are left out, they cost time. */
export const generatedSchemaModule = schema =>
	`export const generatedSchema = JSON.parse(${JSON.stringify(JSON.stringify(schema, bare))});`;

const bare = (key, value) => (key === 'description' && typeof value === 'string' ? undefined : value);

/** The file whose place that module takes. */
export const generatedSchemaFile = /[/\\]source[/\\]profile[/\\]file[/\\]generatedSchema\.ts$/;
