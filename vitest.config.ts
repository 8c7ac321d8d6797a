import {fileURLToPath} from 'node:url';
import {defineConfig, type Plugin} from 'vitest/config';
// @ts-expect-error: a plain script of the build, without types.
import {generatedSchemaFile, generatedSchemaModule, profileSchemaOf} from './build/profileSchema.js';

const env = {FORCE_COLOR: '0', NO_COLOR: '1', TZ: 'UTC'};

/** Closed loops, searches and whole walks, more than half of all the time: `npm test` leaves them to `.ci/run`. */
const slow = [
	'test/study/hearing/againstScipy.test.ts',
	'test/study/hearing/apart.test.ts',
	'test/study/hearing/channels.test.ts',
	'test/study/hearing/faults.test.ts',
	'test/study/hearing/moreFaults.test.ts',
	'test/study/hearing/moved.test.ts',
	'test/study/hearing/onePlaying.test.ts',
	'test/study/calibration/blend/blend.fuzz.test.ts',
	'test/study/calibration/closedLoop.test.ts',
	'test/study/calibration/solve.test.ts',
	'test/study/calibration/proof/blendProof.test.ts',
	'test/study/calibration/proof/prove.test.ts',
	'test/ui/planning/planning.test.tsx',
	'test/ui/screens/hearing.test.tsx',
	'test/ui/walk/bass/bassPage.test.tsx',
	'test/ui/walk/keyCount.test.ts',
	'test/ui/walk/stops.test.ts',
	'test/commands/arrange.test.ts',
	'test/commands/everyUnit.test.ts',
	'test/rooms/arranging.test.ts',
	'test/rooms/physics.test.ts',
	'test/rooms/truth/lines.test.ts',
	'test/rooms/truth/truth.test.ts',
	'test/rooms/world.test.ts',
	'test/study/survey/anyInput.test.ts',
	'test/study/survey/blunders.test.ts',
	'test/profile/file/parse.test.ts',
];

/** The program is tested with the schema that the build writes in, so that what ships is what is tested. */
const shippedSchema: Plugin = {
	name: 'shipped-schema',
	async load(id) {
		if (!generatedSchemaFile.test(id)) return undefined;
		return generatedSchemaModule(await profileSchemaOf(fileURLToPath(new URL('.', import.meta.url))));
	},
};

const unit = {
	include: ['test/**/*.test.{ts,tsx}'],
	exclude: ['test/e2e/**', 'test/bench/**'],
	env,
	// Property tests and simulated rounds may share two slow cores with other work.
	testTimeout: 60_000,
	// One set of modules a worker instead of one a file: reading them anew took two thirds of the time. It holds because
	// nothing below the screens remembers (test/layers) and a screen's memory belongs to the screen.
	isolate: false,
};

export default defineConfig({
	test: {
		projects: [
			// All of them, the same without the slow ones, and the slow ones alone.
			{plugins: [shippedSchema], test: {...unit, name: 'unit'}},
			{plugins: [shippedSchema], test: {...unit, name: 'quick', exclude: [...unit.exclude, ...slow]}},
			{plugins: [shippedSchema], test: {...unit, name: 'slow', include: slow}},
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
