/**
Runs the built program as a child process without a terminal.

	const {code, stdout, stderr} = await runProgram(['solve', file, '--json']);
	await runProgram(['check', '-'], {input: bytes});                        // stdin
	await runProgram(['list'], {folder: temporaryFolder(), env: {NO_COLOR: '1'}});

The child sees an own, empty home and data folder, so that no test reads or writes the user's profiles.
*/
import {spawn} from 'node:child_process';
import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join, resolve} from 'node:path';
import {onTestFinished} from 'vitest';

export const projectFolder = resolve(import.meta.dirname, '../../..');
export const builtProgram = join(projectFolder, 'dist/cli.cjs');

/** A new empty folder, removed when the test is over. */
export function temporaryFolder(): string {
	const folder = mkdtempSync(join(tmpdir(), 'roomtare-test-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	return folder;
}

/** Environment of a child: nothing from outside that changes what it prints, and a home of its own. */
export function cleanEnvironment(
	home: string,
	more: Readonly<Record<string, string>> = {},
): Record<string, string> {
	return {
		PATH: process.env.PATH ?? '',
		HOME: home,
		XDG_DATA_HOME: join(home, 'data'),
		XDG_STATE_HOME: join(home, 'state'),
		XDG_CACHE_HOME: join(home, 'cache'),
		XDG_CONFIG_HOME: join(home, 'config'),
		LANG: 'C.UTF-8',
		TZ: 'UTC',
		...more,
	};
}

export type Ran = {
	readonly code: number | null;
	readonly signal: NodeJS.Signals | null;
	readonly stdout: string;
	readonly stderr: string;
};

export type RunOptions = {
	/** Working folder; a new empty one where not given. */
	readonly folder?: string;
	readonly input?: string | Uint8Array;
	readonly env?: Readonly<Record<string, string>>;
	/** The program's file; the built one where not given. */
	readonly program?: string;
	readonly deadlineMs?: number;
};

/** Runs the program to its end. A run that is not over by the deadline is killed and shows as `SIGKILL`. */
export function runProgram(args: readonly string[], options: RunOptions = {}): Promise<Ran> {
	const {folder = temporaryFolder(), input = '', env, program = builtProgram, deadlineMs = 60_000} = options;
	const child = spawn(process.execPath, [program, ...args], {
		cwd: folder,
		env: cleanEnvironment(folder, env),
		timeout: deadlineMs,
		killSignal: 'SIGKILL',
	});
	const parts = {stdout: [] as Buffer[], stderr: [] as Buffer[]};
	child.stdout.on('data', (chunk: Buffer) => parts.stdout.push(chunk));
	child.stderr.on('data', (chunk: Buffer) => parts.stderr.push(chunk));
	// A program that ends without reading its input closes the pipe; that is its right.
	child.stdin.on('error', () => {});
	child.stdin.end(input);
	return new Promise((done, fail) => {
		child.on('error', fail);
		child.on('close', (code, signal) => {
			const stdout = Buffer.concat(parts.stdout).toString('utf8');
			done({code, signal, stdout, stderr: Buffer.concat(parts.stderr).toString('utf8')});
		});
	});
}
