import {defineConfig} from 'vitest/config';

const env = {FORCE_COLOR: '0', NO_COLOR: '1', TZ: 'UTC'};

export default defineConfig({
	test: {
		projects: [
			{
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
