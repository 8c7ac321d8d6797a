import {fileURLToPath} from 'node:url';
import {defineConfig, type Plugin} from 'vitest/config';
// @ts-expect-error: a plain script of the build, without types.
import {generatedSchemaFile, generatedSchemaModule, profileSchemaOf} from './build/profileSchema.js';

const env = {FORCE_COLOR: '0', NO_COLOR: '1', TZ: 'UTC'};

/** The program is tested with the schema that the build writes in, so that what ships is what is tested. */
const shippedSchema: Plugin = {
	name: 'shipped-schema',
	async load(id) {
		if (!generatedSchemaFile.test(id)) return undefined;
		return generatedSchemaModule(await profileSchemaOf(fileURLToPath(new URL('.', import.meta.url))));
	},
};

export default defineConfig({
	test: {
		projects: [
			{
				plugins: [shippedSchema],
				test: {
					name: 'unit',
					include: ['test/**/*.test.{ts,tsx}'],
					exclude: ['test/e2e/**', 'test/bench/**'],
					env,
					// Property tests and simulated rounds may share two slow cores with other work.
					testTimeout: 60_000,
				},
			},
			{
				test: {
					name: 'e2e',
					include: ['test/e2e/**/*.test.ts'],
					env,
					testTimeout: 120_000,
					// Pseudo-terminals of one program: one after the other keeps their screens honest.
					fileParallelism: false,
				},
			},
		],
	},
});
