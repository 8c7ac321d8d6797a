import {spawnSync} from 'node:child_process';
import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {twelveSpeakers} from '../fixtures/bassProfile.js';
import {oneThread, pythonWith} from '../python.js';
import {loadSource} from '../tools.js';

const script = new URL('../fixtures/numpySignals.py', import.meta.url).pathname;

/** Noise and tone files, mono and in the order of 13 channels, written to a folder that goes again; CPU time in ms, so that a busy machine meets it and the reference alike. */
async function writer() {
	const {planSignals, signalRenderer, seededRandom, waveFile, outputFolder} = await loadSource(
		'source/study/playing/plan.ts',
		'source/study/playing/render.ts',
		'source/science/signal/seededRandom.ts',
		'source/science/signal/waveFile.ts',
		'source/platform/outputFolder.ts',
	);
	const plan = planSignals(twelveSpeakers, -30);
	const files = plan.files.filter(({what}) => what !== 'count');
	const seconds = files.reduce(
		(sum, {what, row}) => sum + (row ? 12 * row.length : what === 'tone' ? 5 : 2 ** 18 / 48_000),
		0,
	);
	const write = () =>
		inFolder(folder => {
			const before = process.cpuUsage();
			const render = signalRenderer(plan, seededRandom(1));
			const put = outputFolder(
				folder,
				files.map(({file}) => file),
				true,
			);
			let bytes;
			for (const item of files) {
				bytes = waveFile(render(item), bytes);
				put(item.file, bytes);
			}

			const {user, system} = process.cpuUsage(before);
			return (user + system) / 1000;
		});
	return {write, seconds, listed: files.map(item => listed(plan, item))};
}

/** What the reference needs to know of a file: which channels of how many sound, and what. */
function listed(plan, {file, what, row, spectrum, channel, together, order, levelDbfs}) {
	const ids = together || channel ? (order ?? plan.order).channels : [undefined];
	const at = (together ?? [channel]).map(id => ids.indexOf(id));
	const band = [spectrum?.fromHertz, spectrum?.toHertz];
	return {file, what, levelDbfs, channels: ids.length, at, hertz: row ?? [spectrum.hertz], band};
}

function inFolder(work) {
	const folder = mkdtempSync(join(tmpdir(), 'roomtare-signals-'));
	try {
		return work(folder);
	} finally {
		rmSync(folder, {recursive: true, force: true});
	}
}

function numpyWrites(listed) {
	return inFolder(folder => {
		// Fresh pages cost more than the arithmetic; with these settings numpy keeps its memory between arrays.
		const env = {
			...process.env,
			...oneThread,
			MALLOC_MMAP_THRESHOLD_: '1073741824',
			MALLOC_TRIM_THRESHOLD_: '2147483647',
		};
		const files = join(folder, 'files.json');
		writeFileSync(files, JSON.stringify(listed));
		const ran = spawnSync(pythonWith('numpy'), [script, folder, files], {encoding: 'utf8', env});
		if (ran.status !== 0) throw new Error(ran.stderr);
		return Number(ran.stdout);
	});
}

export default [
	{
		name: 'Test signals, times as fast as they play',
		goal: {least: 50, unit: '× real time'},
		async run({rounds, median}) {
			const {write, seconds} = await writer();
			const times = Array.from({length: rounds(5)}, () => write());
			return {
				value: (1000 * seconds) / median(times),
				note: `${seconds.toFixed(0)} s of sound, median of ${times.length}`,
			};
		},
	},
	{
		name: 'Test signals, against numpy writing the same',
		goal: {most: 1, unit: '× numpy'},
		async run({rounds, pairedRatio}) {
			const {write, listed} = await writer();
			return pairedRatio(write, () => numpyWrites(listed), rounds(7));
		},
	},
];
