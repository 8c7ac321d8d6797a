import {randomBytes} from 'node:crypto';
import fs from 'node:fs';
import {hostname} from 'node:os';
import {errorCode} from './fileTrouble.ts';

/** Who works on a file. */
export type Holder = {
	readonly pid: number;
	readonly host: string;
	readonly since: string;
	/** When the process began, where the system tells: numbers of processes are given again. */
	readonly began?: string;
};

export type Lock =
	| {readonly kind: 'held-here'; readonly release: () => void}
	| {readonly kind: 'held-elsewhere'; readonly holder: Holder; readonly text: string};

export type LockOptions = {
	readonly name?: string;
	readonly isForced?: boolean;
	/** A lock taken longer ago, or further in the future, is nobody's: whoever held it was killed or asleep. */
	readonly lastsMs?: number;
	/** What the text says about the file. */
	readonly what?: string;
};

/** Locks of this process, so that one with our own number left by a dead process is not taken for ours. */
const ours = new Set<string>();

/** Name of the lock beside a file. */
export function lockPath(path: string): string {
	return `${path}.lock`;
}

/**
Marks a file as being worked on, so that a second process is told. The lock is advisory: it stops nobody who ignores it,
and what a save overwrites is checked apart from it. A lock left by a process that is no longer there is taken over.

@param options - `name`: file of the lock. `isForced`: takes the lock from whoever has it. `lastsMs`: how long it counts.
@throws The file system's error where the lock cannot be written.
*/
export function takeLock(path: string, now: Date, options: LockOptions = {}): Lock {
	const {
		name = lockPath(path),
		isForced = false,
		lastsMs = Number.POSITIVE_INFINITY,
		what = 'is open',
	} = options;
	const began = beginOf(process.pid);
	const own: Holder = {
		pid: process.pid,
		host: hostname(),
		since: now.toISOString(),
		...(began !== undefined && {began}),
	};
	const content = JSON.stringify(own);
	const isOver = ({since}: Holder) => Math.abs(now.getTime() - Date.parse(since)) > lastsMs;
	for (let attempt = 0; attempt < 5; attempt++) {
		if (placeLock(name, content)) {
			ours.add(name);
			return {kind: 'held-here', release: () => releaseLock(name, content)};
		}

		const text = readText(name);
		if (text === undefined) continue;
		const holder = readHolder(text);
		if (holder && !isForced && !isOver(holder) && isAlive(holder, name))
			return {kind: 'held-elsewhere', holder, text: holderText(path, holder, what)};
		removeStale(name, text);
	}

	const holder = readHolder(readText(name) ?? '') ?? {pid: 0, host: 'unknown', since: own.since};
	return {kind: 'held-elsewhere', holder, text: holderText(path, holder, what)};
}

function holderText(path: string, {pid, host, since}: Holder, what: string): string {
	return `${path} ${what} in another roomtare (process ${pid} on ${host}, since ${since.slice(0, 16).replace('T', ' ')} UTC).`;
}

/** When a process began, as Linux tells it; undefined elsewhere. */
function beginOf(pid: number): string | undefined {
	try {
		// The name in brackets may hold blanks and brackets itself; the start is the 20th field after it (proc(5)).
		const fields = fs.readFileSync(`/proc/${pid}/stat`, 'latin1').replace(/^.*\)/s, '');
		const start = fields.trim().split(' ')[19];
		return start && `${start} ${fs.readFileSync('/proc/sys/kernel/random/boot_id', 'latin1').trim()}`;
	} catch {
		return undefined;
	}
}

/** Puts the whole lock in place in one step, so that nobody ever reads half of it. */
function placeLock(name: string, content: string): boolean {
	const temporary = `${name}.${randomBytes(6).toString('hex')}.tmp`;
	try {
		fs.writeFileSync(temporary, content, {flag: 'wx'});
		return linkOrWrite(temporary, name, content);
	} catch (error) {
		if (errorCode(error) === 'EEXIST') return false;
		throw error;
	} finally {
		fs.rmSync(temporary, {force: true});
	}
}

/** File systems without hard links take the text itself. */
function linkOrWrite(temporary: string, name: string, content: string): true {
	try {
		fs.linkSync(temporary, name);
	} catch (error) {
		if (errorCode(error) === 'EEXIST') throw error;
		fs.writeFileSync(name, content, {flag: 'wx'});
	}

	return true;
}

function readText(name: string): string | undefined {
	try {
		return fs.readFileSync(name, 'utf8');
	} catch {
		return undefined;
	}
}

function readHolder(text: string): Holder | undefined {
	try {
		const {pid, host, since, began} = JSON.parse(text) as Record<string, unknown>;
		if (typeof pid !== 'number' || !Number.isInteger(pid) || pid < 1 || typeof host !== 'string')
			return undefined;
		return {pid, host, since: String(since), ...(typeof began === 'string' && {began})};
	} catch {
		return undefined;
	}
}

function isAlive({pid, host, began}: Holder, name: string): boolean {
	// Nobody can tell from here whether a process on another machine still runs.
	if (host !== hostname()) return true;
	if (pid === process.pid) return ours.has(name);
	try {
		process.kill(pid, 0);
	} catch (error) {
		if (errorCode(error) !== 'EPERM') return false;
	}

	// Another process may have been given the number since.
	const now = beginOf(pid);
	return began === undefined || now === undefined || began === now;
}

/** Moves the stale lock aside and looks again: another process may have taken over in between, and keeps its lock then. */
function removeStale(name: string, seen: string): void {
	const aside = `${name}.${randomBytes(6).toString('hex')}.tmp`;
	try {
		fs.renameSync(name, aside);
		if (readText(aside) !== seen) fs.linkSync(aside, name);
	} catch {
		// Taken away or replaced by another process: the next attempt sees how things stand.
	} finally {
		fs.rmSync(aside, {force: true});
	}
}

/** Takes the lock away, unless another process has forced its own in its place. */
function releaseLock(name: string, content: string): void {
	if (!ours.delete(name)) return;
	if (readText(name) === content) fs.rmSync(name, {force: true});
}
