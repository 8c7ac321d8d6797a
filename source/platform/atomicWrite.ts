import {randomBytes} from 'node:crypto';
import fs from 'node:fs';
import {dirname} from 'node:path';
import {errorCode} from './fileTrouble.ts';
import {renameOver} from './renameOver.ts';

/** The one call that fails on a full disk; replaced in tests. */
export type WriteBytes = (descriptor: number, bytes: Uint8Array, offset: number) => number;

const writeBytes: WriteBytes = (descriptor, bytes, offset) => fs.writeSync(descriptor, bytes, offset);

/**
Writes a new file beside the target and has it on the disk before it returns its name. write(2) may take only part of
the bytes when a disk runs full, without an error; so the rest is written until all is there or an error comes.
*/
function writeTemporary(path: string, bytes: Uint8Array, write: WriteBytes): string {
	const temporary = `${path}.${randomBytes(6).toString('hex')}.tmp`;
	const descriptor = fs.openSync(temporary, 'wx', permissionsOf(path));
	try {
		for (let offset = 0; offset < bytes.length; ) offset += write(descriptor, bytes, offset);
		fs.fsyncSync(descriptor);
	} catch (error) {
		fs.closeSync(descriptor);
		fs.rmSync(temporary, {force: true});
		throw error;
	}

	fs.closeSync(descriptor);
	return temporary;
}

function permissionsOf(path: string): number {
	try {
		return fs.statSync(path).mode & 0o777;
	} catch {
		return 0o666;
	}
}

/** Makes renames in a folder last through a power cut. Some systems cannot open folders; they order renames themselves. */
function syncFolder(folder: string): void {
	try {
		const descriptor = fs.openSync(folder, 'r');
		try {
			fs.fsyncSync(descriptor);
		} finally {
			fs.closeSync(descriptor);
		}
	} catch {}
}

/** A second name for the version that stands, replacing the one before it; at every moment each name holds a whole file. */
function keepPrevious(path: string, previous: string): void {
	const temporary = `${previous}.${randomBytes(6).toString('hex')}.tmp`;
	try {
		fs.linkSync(path, temporary);
	} catch (error) {
		if (errorCode(error) === 'ENOENT') return;
		// File systems without hard links.
		fs.copyFileSync(path, temporary);
	}

	try {
		renameOver(temporary, previous);
	} finally {
		// Renaming one of two names of a single file onto the other does nothing and leaves both.
		fs.rmSync(temporary, {force: true});
	}
}

/**
Replaces a file by new content: all of it or nothing, on the disk when this returns. Links are followed.

@param previous - Where the version that stood before is kept.
@throws The file system's error; the old file stands then, and no temporary file is left.
*/
export function replaceFile(
	path: string,
	bytes: Uint8Array,
	previous?: string,
	write: WriteBytes = writeBytes,
): void {
	let target = path;
	try {
		target = fs.realpathSync(path);
	} catch (error) {
		if (errorCode(error) !== 'ENOENT') throw error;
	}

	const temporary = writeTemporary(target, bytes, write);
	try {
		if (previous !== undefined) keepPrevious(target, previous);
		renameOver(temporary, target);
	} catch (error) {
		fs.rmSync(temporary, {force: true});
		throw error;
	}

	syncFolder(dirname(target));
}

/**
Writes a file that must not exist yet.

@throws The file system's error: EEXIST where something stands there; it is left as it is.
*/
export function createFile(path: string, bytes: Uint8Array, write: WriteBytes = writeBytes): void {
	const temporary = writeTemporary(path, bytes, write);
	try {
		fs.linkSync(temporary, path);
	} catch (error) {
		if (errorCode(error) === 'EEXIST') throw error;
		fs.copyFileSync(temporary, path, fs.constants.COPYFILE_EXCL);
	} finally {
		fs.rmSync(temporary, {force: true});
	}

	syncFolder(dirname(path));
}
