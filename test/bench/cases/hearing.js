import {spawnSync} from 'node:child_process';
import {mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {oneThread, pythonWith} from '../python.js';
import {builtProgram, loadSource, projectFolder} from '../tools.js';

const script = new URL('../fixtures/numpyHearing.py', import.meta.url).pathname;
const probe = join(projectFolder, 'test/bench/fixtures/peakMemory.cjs');
const demo = join(projectFolder, 'profiles/cellar-2026.json');
const rate = 48_000;
const channels = ['FL', 'FR', 'FC', 'LFE1', 'BL', 'BR', 'SiL', 'SiR'];
const seats = 3;

/** Three playings of eight channels, one a seat, each channel with a delay and a reflection of its own, with noise. */
async function recorded(folder) {
	const {playedRound, roundSamples, syncChirp, readWave, hearRecording} = await loadSource(
		'source/study/hearing/round.ts',
		'source/study/playing/roundSamples.ts',
		'source/study/hearing/roundMark.ts',
		'source/science/signal/waveRead.ts',
		'source/study/hearing/hearRecording.ts',
	);
	const round = playedRound('all', channels);
	const each = Math.ceil(round.seconds * rate) + rate;
	const mixed = new Int16Array(seats * each);
	for (const [index, channel] of round.channels.entries()) {
		const samples = roundSamples(round, channel);
		for (let seat = 0; seat < seats; seat += 1) {
			const delay = 300 + 37 * index + 11 * seat;
			for (let at = 0; at < samples.length; at += 1) {
				if (samples[at] === 0) continue;
				mixed[seat * each + at + delay] += 16_000 * samples[at];
				mixed[seat * each + at + delay + 400] += 5000 * samples[at];
			}
		}
	}

	let state = 1;
	for (let at = 0; at < mixed.length; at += 1) {
		state = (state * 16_807) % 2_147_483_647;
		mixed[at] += Math.round((state / 2_147_483_647 - 0.5) * 20);
	}

	const path = join(folder, 'round.wav');
	writeFileSync(path, Buffer.concat([header(mixed.byteLength), Buffer.from(mixed.buffer)]));
	const laws = {};
	const sweeps = round.sweeps.map(({channel, pass, law, atSeconds, pauseSeconds}) => {
		const key = `${law.toHertz} ${law.seconds}`;
		laws[key] = {from: law.fromHertz, to: law.toHertz, L: law.rateSeconds, seconds: law.seconds};
		return {channel, pass, law: key, at: atSeconds, pause: pauseSeconds};
	});
	const starts = Array.from({length: seats}, (_, seat) => seat * each + 300);
	const plan = join(folder, 'plan.json');
	writeFileSync(plan, JSON.stringify({rate, laws, sweeps, starts, chirp: [...syncChirp(rate)]}));
	const hear = () => {
		// CPU time, collector and compiler included, so that a busy machine meets both alike.
		const before = process.cpuUsage();
		const read = readWave(readFileSync(path));
		const work = hearRecording(read.sound);
		let next = work.next();
		while (!next.done) next = work.next();
		if (next.value.playings.length !== seats)
			throw new Error(`${next.value.playings.length} playings were heard`);
		const {user, system} = process.cpuUsage(before);
		return (user + system) / 1000;
	};
	return {hear, path, plan};
}

function header(bytes) {
	const buffer = Buffer.alloc(44);
	buffer.write('RIFF', 0);
	buffer.writeUInt32LE(36 + bytes, 4);
	buffer.write('WAVEfmt ', 8);
	buffer.writeUInt32LE(16, 16);
	buffer.writeUInt16LE(1, 20);
	buffer.writeUInt16LE(1, 22);
	buffer.writeUInt32LE(rate, 24);
	buffer.writeUInt32LE(2 * rate, 28);
	buffer.writeUInt16LE(2, 32);
	buffer.writeUInt16LE(16, 34);
	buffer.write('data', 36);
	buffer.writeUInt32LE(bytes, 40);
	return buffer;
}

function numpyHears(path, plan) {
	// Fresh pages cost more than the arithmetic; with these settings numpy keeps its memory between arrays.
	const env = {
		...process.env,
		...oneThread,
		MALLOC_MMAP_THRESHOLD_: '1073741824',
		MALLOC_TRIM_THRESHOLD_: '2147483647',
	};
	const ran = spawnSync(pythonWith('numpy'), [script, path, plan], {encoding: 'utf8', env});
	if (ran.status !== 0) throw new Error(ran.stderr);
	return Number(ran.stdout);
}

export default [
	{
		name: 'Hearing eight channels at three seats: peak memory',
		goal: {most: 500, unit: 'MiB'},
		async run({runNode}) {
			const folder = mkdtempSync(join(tmpdir(), 'roomtare-hearing-'));
			try {
				const {path} = await recorded(folder);
				const args = ['-r', probe, builtProgram, 'hear', demo, path, '--json'];
				const {output} = runNode(args, {stdio: ['ignore', 'ignore', 'pipe', 'pipe']});
				return {value: Number(String(output[3])) / 1024, note: 'whole process of hear --json'};
			} finally {
				rmSync(folder, {recursive: true, force: true});
			}
		},
	},
	{
		name: 'Hearing eight channels at three seats, against numpy doing the same',
		goal: {most: 1, unit: '× numpy'},
		async run({rounds, pairedRatio}) {
			const folder = mkdtempSync(join(tmpdir(), 'roomtare-hearing-'));
			try {
				const {hear, path, plan} = await recorded(folder);
				// Once to warm up, as the app's worker is after its first playing.
				hear();
				return await pairedRatio(hear, () => numpyHears(path, plan), rounds(5));
			} finally {
				rmSync(folder, {recursive: true, force: true});
			}
		},
	},
];
