import {spawnSync} from 'node:child_process';
import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join, resolve} from 'node:path';
import {fileURLToPath, pathToFileURL} from 'node:url';
import {build} from 'esbuild';
import {leanMeow} from '../../build/leanMeow.js';
import {lateSegmenters, noDeveloperTools, quietBuiltins} from '../../build/plugins.js';

export const projectFolder = resolve(
	import.meta.dirname ?? fileURLToPath(new URL('.', import.meta.url)),
	'../..',
);
export const builtProgram = join(projectFolder, 'dist/cli.cjs');

/** What the cases work with; few rounds in a smoke run. */
export function tools(isSmoke) {
	return {
		isSmoke,
		rounds: full => (isSmoke ? Math.min(2, full) : full),
		pairedRatio,
		median,
		quantile,
		runNode,
	};
}

/** Value below which the given share of the values lies (nearest rank). */
export function quantile(values, share) {
	const sorted = [...values].sort((a, b) => a - b);
	return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))];
}

export const median = values => quantile(values, 0.5);

/**
Ratio of two costs, measured in pairs that change their order, so that a busy moment meets both.

@param subject - Returns its cost; a time in ms where it returns nothing.
@param reference - The same for what it is held against.
@returns Median of the pairs' ratios, and a note with it and both medians.
*/
export async function pairedRatio(subject, reference, rounds, unit = 'ms') {
	const costs = {subject: [], reference: []};
	const ratios = [];
	for (let round = 0; round < rounds; round++) {
		const order = round % 2 === 0 ? ['subject', 'reference'] : ['reference', 'subject'];
		for (const which of order) costs[which].push(await costOf(which === 'subject' ? subject : reference));
		ratios.push(costs.subject.at(-1) / costs.reference.at(-1));
	}

	const [a, b] = [median(costs.subject), median(costs.reference)].map(cost => cost.toPrecision(3));
	return {value: median(ratios), note: `${a} ${unit} against ${b} ${unit}, ${rounds} pairs`};
}

async function costOf(work) {
	const start = performance.now();
	const cost = await work();
	return typeof cost === 'number' ? cost : performance.now() - start;
}

/** Runs Node to its end with the given arguments and checks the exit code. */
export function runNode(args, {codes = [0, 1], ...options} = {}) {
	const home = join(tmpdir(), 'roomtare-bench-home');
	const env = {PATH: process.env.PATH, HOME: home, XDG_DATA_HOME: join(home, 'data'), ...options.env};
	const ran = spawnSync(process.execPath, args, {
		stdio: ['ignore', 'ignore', 'pipe'],
		maxBuffer: 2 ** 30,
		...options,
		env,
	});
	if (!codes.includes(ran.status)) {
		throw new Error(`${args.join(' ')}: code ${ran.status}, signal ${ran.signal}\n${ran.stderr}`);
	}

	return ran;
}

/**
Loads a module of the source as it is in the published program: bundled, with the production form of its libraries.

@param path - Relative to the project, such as `source/study/calibration/solve.ts`. Several give one object with the exports of
all, so that they share what they import.
*/
export async function loadSource(...paths) {
	const folder = mkdtempSync(join(tmpdir(), 'roomtare-bench-'));
	try {
		const outfile = join(folder, 'bundle.mjs');
		await build({
			absWorkingDir: projectFolder,
			stdin: {
				contents: paths.map(path => `export * from './${path}';`).join('\n'),
				resolveDir: projectFolder,
				loader: 'ts',
			},
			outfile,
			bundle: true,
			platform: 'node',
			format: 'esm',
			target: 'node20',
			define: {'process.env.NODE_ENV': '"production"'},
			banner: {
				js: "import {createRequire as __createRequire} from 'node:module';const require=__createRequire(import.meta.url);",
			},
			plugins: [leanMeow, noDeveloperTools, lateSegmenters, quietBuiltins],
			logLevel: 'warning',
		});
		return await import(pathToFileURL(outfile).href);
	} finally {
		rmSync(folder, {recursive: true, force: true});
	}
}
