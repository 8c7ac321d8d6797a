import {join, resolve} from 'node:path';
import {fileURLToPath} from 'node:url';
import {build} from 'esbuild';
import {lateSchema} from '../../build/plugins.js';
import {profileSchemaOf} from '../../build/profileSchema.js';

const projectFolder = resolve(fileURLToPath(new URL('.', import.meta.url)), '../..');

/**
Bundles `saver.ts`, a process that saves one profile again and again, to be killed.

@param {string} folder - Where the bundle goes.
@returns {Promise<string>} Its path.
*/
export async function saverBundle(folder) {
	const bundle = join(folder, 'saver.mjs');
	await build({
		entryPoints: [join(projectFolder, 'test/fuzz/saver.ts')],
		outfile: bundle,
		bundle: true,
		platform: 'node',
		format: 'esm',
		banner: {
			js: "import {createRequire as __createRequire} from 'node:module';const require=__createRequire(import.meta.url);",
		},
		plugins: [lateSchema(await profileSchemaOf(projectFolder))],
		logLevel: 'error',
	});
	return bundle;
}
