import {randomBytes} from 'node:crypto';
import fs from 'node:fs';
import {hostname} from 'node:os';
import {errorCode} from './fileTrouble.ts';

/** Who works on a file. */
export type Holder = {readonly pid: number; readonly host: string; readonly since: string};

export type Lock =
	| {readonly kind: 'held-here'; readonly release: () => void}
	| {readonly kind: 'held-elsewhere'; readonly holder: Holder; readonly text: string};

export type LockOptions = {readonly name?: string; readonly isForced?: boolean};

/** Locks of this process, so that one with our own number left by a dead process is not taken for ours. */
const ours = new Set<string>();

/** Name of the lock beside a file. */
export function lockPath(path: string): string {
	return `${path}.lock`;
}

/**
Marks a file as being worked on, so that a second process is told. The lock is advisory: it stops nobody who ignores it,
and what a save overwrites is checked apart from it. A lock left by a process that is no longer there is taken over.

@param options - `name`: file of the lock. `isForced`: takes the lock from whoever has it.
@throws The file system's error where the lock cannot be written.
*/
export function takeLock(path: string, now: Date, options: LockOptions = {}): Lock {
	const {name = lockPath(path), isForced = false} = options;
	const own: Holder = {pid: process.pid, host: hostname(), since: now.toISOString()};
	const content = JSON.stringify(own);
	for (let attempt = 0; attempt < 5; attempt++) {
		if (placeLock(name, content)) {
			ours.add(name);
			return {kind: 'held-here', release: () => releaseLock(name, content)};
		}

		const text = readText(name);
		if (text === undefined) continue;
		const holder = readHolder(text);
		if (holder && !isForced && isAlive(holder, name))
			return {kind: 'held-elsewhere', holder, text: holderText(path, holder)};
		removeStale(name, text);
	}

	const holder = readHolder(readText(name) ?? '') ?? {pid: 0, host: 'unknown', since: own.since};
	return {kind: 'held-elsewhere', holder, text: holderText(path, holder)};
}

function holderText(path: string, {pid, host, since}: Holder): string {
	return `${path} is open in another roomtare (process ${pid} on ${host}, since ${since.slice(0, 16).replace('T', ' ')} UTC).`;
}

/** Puts the whole lock in place in one step, so that nobody ever reads half of it. */
function placeLock(name: string, content: string): boolean {
	const temporary = `${name}.${randomBytes(6).toString('hex')}.tmp`;
	fs.writeFileSync(temporary, content, {flag: 'wx'});
	try {
		fs.linkSync(temporary, name);
		return true;
	} catch (error) {
		if (errorCode(error) === 'EEXIST') return false;
		try {
			// File systems without hard links.
			fs.writeFileSync(name, content, {flag: 'wx'});
			return true;
		} catch (second) {
			if (errorCode(second) === 'EEXIST') return false;
			throw second;
		}
	} finally {
		fs.rmSync(temporary, {force: true});
	}
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
		const {pid, host, since} = JSON.parse(text) as Record<string, unknown>;
		if (typeof pid !== 'number' || !Number.isInteger(pid) || pid < 1 || typeof host !== 'string')
			return undefined;
		return {pid, host, since: String(since)};
	} catch {
		return undefined;
	}
}

function isAlive({pid, host}: Holder, name: string): boolean {
	// Nobody can tell from here whether a process on another machine still runs.
	if (host !== hostname()) return true;
	if (pid === process.pid) return ours.has(name);
	try {
		process.kill(pid, 0);
		return true;
	} catch (error) {
		return errorCode(error) === 'EPERM';
	}
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
