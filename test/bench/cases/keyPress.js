import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {spawn} from '@lydell/node-pty';
import {largeProfile} from '../fixtures/largeProfile.js';
import {builtProgram} from '../tools.js';

/** Frames end with the mark of a synchronised update, where the terminal takes them, else with the write itself. */
const quietMs = 60;

/** Milliseconds from each key to the first bytes of the frame that answers it, at an easy typing pace. */
async function keyTimes(file, folder, keys) {
	const child = spawn(process.execPath, [builtProgram, 'walk', file], {
		cols: 160,
		rows: 45,
		cwd: folder,
		env: {PATH: process.env.PATH, HOME: folder, TERM: 'xterm-256color'},
	});
	let written = '';
	let onFrame = () => {};
	child.onData(chunk => {
		written += chunk;
		onFrame();
	});
	const pause = ms => new Promise(done => setTimeout(done, ms));
	try {
		for (let tries = 0; !/Meter, /.test(written); tries++) {
			if (tries > 400) throw new Error(`The walk never opened. It wrote:\n${written.slice(-500)}`);
			await pause(50);
		}

		await pause(500);
		const times = [];
		for (const key of keys) {
			const start = performance.now();
			const answered = new Promise(done => {
				onFrame = () => done(performance.now() - start);
			});
			child.write(key);
			times.push(await Promise.race([answered, pause(2000).then(() => 2000)]));
			onFrame = () => {};
			await pause(quietMs);
		}

		return times;
	} finally {
		child.kill('SIGKILL');
	}
}

const up = '\u001b[A';
const down = '\u001b[B';
const erase = '\u007f';

export default {
	name: 'Key press to frame, 16 channels × 8 seats',
	goal: {most: 16, unit: 'ms at the 99th percentile'},
	async run({rounds, quantile}) {
		const folder = mkdtempSync(join(tmpdir(), 'roomtare-bench-'));
		try {
			const file = join(folder, 'full.json');
			writeFileSync(file, JSON.stringify(largeProfile()));
			const round = ['7', '4', '.', '2', erase, erase, erase, erase, down, down, up, up];
			const times = await keyTimes(file, folder, Array.from({length: rounds(40)}, () => round).flat());
			const note = `median ${quantile(times, 0.5).toFixed(1)} ms of ${times.length} keys, both ways through a pseudo-terminal`;
			return {value: quantile(times, 0.99), note};
		} finally {
			rmSync(folder, {recursive: true, force: true});
		}
	},
};
