// Fuzzing: `npm run fuzz -- MINUTES [SEED]`. Random profiles, valid and absurd, go through reading, saving and every
// command that reads one, and under random keys through the app on files in memory. Nothing may throw, compute for 20
// seconds without an end, print NaN, Infinity, undefined or a control character, or keep what cannot be read again. What falls is told
// with its seed and kept in a folder, to be made again by `npm run fuzz -- 0.01 SEED`.
import {mkdirSync, mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join, resolve} from 'node:path';
import {fileURLToPath, pathToFileURL} from 'node:url';
import {Worker} from 'node:worker_threads';
import {build} from 'esbuild';
import {fewDecoders} from '../../build/fewDecoders.js';
import {leanMeow} from '../../build/leanMeow.js';
import {
	alwaysDraws,
	lateSchema,
	lateSegmenters,
	noDeveloperTools,
	quietBuiltins,
} from '../../build/plugins.js';
import {profileSchemaOf} from '../../build/profileSchema.js';

const here = fileURLToPath(new URL('.', import.meta.url));
const projectFolder = resolve(here, '../..');
const minutes = Number(process.argv[2] ?? 2);
const seed = Number(process.argv[3] ?? Math.floor(Date.now() / 1000) * 1000);
if (!(minutes > 0) || !Number.isSafeInteger(seed)) {
	console.error('npm run fuzz -- MINUTES [SEED]');
	process.exit(2);
}

/** Of computing, not of waiting: other work may have the processor. */
const hangSeconds = 20;
const usedSeconds = () => {
	const {user, system} = process.cpuUsage();
	return (user + system) / 1e6;
};
const mostFalls = 50;
const scratch = mkdtempSync(join(tmpdir(), 'roomtare-fuzz-'));
const cases = join(tmpdir(), 'roomtare-fuzz-cases');
const bundle = join(scratch, 'subject.mjs');
await build({
	absWorkingDir: projectFolder,
	stdin: {
		contents:
			"export * from './test/fuzz/subject.ts'; export {visibleText} from './source/profile/visibleText.ts';",
		resolveDir: projectFolder,
		loader: 'ts',
	},
	outfile: bundle,
	bundle: true,
	platform: 'node',
	format: 'esm',
	target: 'node20',
	define: {'process.env.NODE_ENV': '"production"'},
	banner: {
		js: "import {createRequire as __createRequire} from 'node:module';const require=__createRequire(import.meta.url);",
	},
	plugins: [
		fewDecoders,
		leanMeow,
		noDeveloperTools,
		alwaysDraws,
		lateSchema(await profileSchemaOf(projectFolder)),
		lateSegmenters,
		quietBuiltins,
	],
	logLevel: 'warning',
});

const endsAt = Date.now() + minutes * 60_000;
const counts = {parsed: 0, valid: 0, calls: 0, sessions: 0, keys: 0, frames: 0};
let falls = 0;

function tellFall({seed: at, what, problem, text}) {
	falls++;
	mkdirSync(cases, {recursive: true});
	const file = join(cases, `${at}.json`);
	writeFileSync(file, text);
	console.log(
		`\nFell at seed ${at}: ${what}\n${problem.split('\n').slice(0, 8).join('\n')}\nprofile: ${file}`,
	);
}

/** One worker at a time; a new one goes on after a case that never ended. */
function work(firstSeed) {
	return new Promise(done => {
		const worker = new Worker(join(here, 'worker.js'), {
			workerData: {bundle: pathToFileURL(bundle).href, projectFolder, firstSeed, endsAt},
			env: {...process.env, NO_COLOR: '1'},
		});
		let last = {seed: firstSeed, what: 'start', text: ''};
		const end = async next => {
			clearInterval(timer);
			await worker.terminate();
			done(next);
		};
		let since = usedSeconds();
		const timer = setInterval(() => {
			if (usedSeconds() - since < hangSeconds) return;
			tellFall({...last, problem: `did not end within ${hangSeconds} s of computing`});
			void end(last.seed + 1);
		}, 1000);
		worker.on('message', ({kind, ...more}) => {
			since = usedSeconds();
			if (kind === 'begin') last = more;
			else if (kind === 'fall') tellFall(more);
			else if (kind === 'done') void end();
			else for (const [key, value] of Object.entries(more)) counts[key] += value;
			if (falls >= mostFalls) void end();
		});
		worker.on('error', error => {
			tellFall({...last, problem: String(error?.stack ?? error)});
			void end(last.seed + 1);
		});
	});
}

for (let next = seed; next !== undefined && Date.now() < endsAt; ) next = await work(next);
rmSync(scratch, {recursive: true, force: true});
const {parsed, valid, calls, sessions, keys, frames} = counts;
console.log(
	`\nFuzzed from seed ${seed}: ${parsed} texts read, ${valid} valid profiles, ${calls} commands, ${sessions} sessions with ${keys} keys and ${frames} frames. ${falls} fell.`,
);
process.exitCode = falls > 0 ? 1 : 0;
