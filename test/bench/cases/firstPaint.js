import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {spawn} from '@lydell/node-pty';
import {builtProgram, projectFolder} from '../tools.js';

/** Milliseconds from the start of a program in a pseudo-terminal until it has drawn the given text. */
function paintMs(args, sought, folder) {
	return new Promise((done, fail) => {
		const start = performance.now();
		const child = spawn(process.execPath, args, {
			cols: 80,
			rows: 24,
			cwd: folder,
			env: {
				PATH: process.env.PATH,
				HOME: folder,
				XDG_DATA_HOME: join(folder, 'data'),
				TERM: 'xterm-256color',
			},
		});
		let written = '';
		let paintedMs;
		const timer = setTimeout(() => child.kill('SIGKILL'), 20_000);
		child.onData(chunk => {
			written += chunk;
			if (paintedMs === undefined && sought.test(written)) {
				paintedMs = performance.now() - start;
				child.kill('SIGKILL');
			}
		});
		child.onExit(() => {
			clearTimeout(timer);
			if (paintedMs === undefined)
				fail(new Error(`Never painted ${sought}. It wrote:\n${written.slice(-500)}`));
			else done(paintedMs);
		});
	});
}

export default {
	name: 'First paint of the app',
	goal: {most: 0.45, unit: '× Ink hello-world, unbundled'},
	async run({rounds, pairedRatio}) {
		const folder = mkdtempSync(join(tmpdir(), 'roomtare-bench-'));
		try {
			const hello = join(projectFolder, 'test/bench/fixtures/inkHello.js');
			return await pairedRatio(
				() => paintMs([builtProgram], /roomtare/, folder),
				() => paintMs([hello], /hello world/, folder),
				rounds(15),
			);
		} finally {
			rmSync(folder, {recursive: true, force: true});
		}
	},
};
