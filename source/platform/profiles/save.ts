import fs from 'node:fs';
import {dirname} from 'node:path';
import {checkProfile, problemLines} from '../../profile/file/parse.ts';
import {serialiseProfile} from '../../profile/file/serialise.ts';
import type {Profile} from '../../profile/types.ts';
import {createFile, replaceFile, type WriteBytes} from '../atomicWrite.ts';
import {errorCode, fileTrouble, withTrouble} from '../fileTrouble.ts';
import {type Lock, takeLock} from '../lock.ts';
import {makeFolder} from '../makeFolder.ts';
import {Trouble} from '../trouble.ts';
import {otherPath, previousPath} from './fileName.ts';
import {markOf} from './read.ts';

export type SaveResult =
	/** `otherPath`: where the version of another program is kept that was written over. */
	| {readonly kind: 'saved'; readonly mark: string; readonly otherPath?: string}
	/** Somebody else wrote or removed the file since it was read. Nothing was written. */
	| {readonly kind: 'changed-elsewhere'; readonly text: string}
	/** Another process is saving the file, or left its mark of doing so. Nothing was written. */
	| {readonly kind: 'held-elsewhere'; readonly text: string}
	/** The profile could not be read again. Nothing was written. */
	| {readonly kind: 'unsound'; readonly problems: readonly string[]};

/** What a save needs of the world besides the file. */
export type SaveOptions = {
	readonly now?: Date;
	readonly write?: WriteBytes;
	/**
	Writes whatever stands there and whoever says to be saving it. What another program has written is kept beside, under a
	name that no later save replaces.
	*/
	readonly isForced?: boolean;
};

/** Another save takes milliseconds; waiting for it beats bothering the user. */
const waits = 20;
const waitMs = 15;
/** No save takes a minute: a lock as old is left from a killed one, on whatever machine that was. */
const lastsMs = 60_000;

/** The content of the file, or what is wrong with it. */
function contentOf(profile: Profile): Uint8Array | readonly string[] {
	const problems = checkProfile(profile);
	if (problems.length > 0) return problemLines(problems, 10);
	return new TextEncoder().encode(serialiseProfile(profile));
}

/**
Saves over a profile, all or nothing, and keeps the version before. Done, and on the disk, when it returns.

@param mark - Mark of the content that the change started from; undefined writes whatever stands there.
@throws {Trouble} If the disk or the folder refuses; the old file stands then.
*/
export function saveProfile(
	path: string,
	profile: Profile,
	mark: string | undefined,
	options: SaveOptions = {},
): SaveResult {
	const bytes = contentOf(profile);
	if (!(bytes instanceof Uint8Array)) return {kind: 'unsound', problems: bytes};
	return withTrouble(path, () => {
		const lock = waitForLock(path, options.now ?? new Date(), options.isForced);
		if (lock.kind === 'held-elsewhere') return {kind: 'held-elsewhere', text: lock.text};
		try {
			const standing = mark === undefined ? undefined : standingMark(path);
			const isChanged = mark !== undefined && standing !== mark;
			if (isChanged && !options.isForced)
				return {kind: 'changed-elsewhere', text: changedText(path, standing === undefined)};
			const kept = isChanged && standing !== undefined ? keepOther(path) : undefined;
			const newMark = markOf(bytes);
			// The same content again would push the previous version out for nothing.
			if (newMark !== standing) replaceFile(path, bytes, previousPath(path), options.write);
			return {kind: 'saved', mark: newMark, ...(kept !== undefined && {otherPath: kept})};
		} finally {
			lock.release();
		}
	});
}

/** Copies what another program wrote to a name of its own. */
function keepOther(path: string): string {
	const bytes = fs.readFileSync(path);
	for (let count = 1; ; count++) {
		const other = otherPath(path, count);
		try {
			createFile(other, bytes);
			return other;
		} catch (error) {
			if (errorCode(error) !== 'EEXIST') throw error;
		}
	}
}

function waitForLock(path: string, now: Date, isForced = false): Lock {
	const pause = new Int32Array(new SharedArrayBuffer(4));
	const options = {lastsMs, what: 'is being saved'};
	let lock = takeLock(path, now, options);
	for (let wait = 0; wait < waits && lock.kind === 'held-elsewhere'; wait++) {
		Atomics.wait(pause, 0, 0, waitMs);
		// Forced only at the end: who really saves is waited for.
		lock = takeLock(path, now, {...options, isForced: isForced && wait === waits - 1});
	}

	return lock;
}

function standingMark(path: string): string | undefined {
	try {
		return markOf(fs.readFileSync(path));
	} catch (error) {
		if (errorCode(error) === 'ENOENT') return undefined;
		throw error;
	}
}

function changedText(path: string, isGone: boolean): string {
	return `${path} was ${isGone ? 'removed' : 'changed'} by another program since it was read. Nothing was overwritten.`;
}

/**
Writes a profile to a new file; makes the folder where it is missing.

@throws {Trouble} If the profile could not be read again, something stands there already, or the disk or the folder refuses.
*/
export function createProfileFile(
	path: string,
	profile: Profile,
	write?: WriteBytes,
): {readonly mark: string} {
	const bytes = contentOf(profile);
	if (!(bytes instanceof Uint8Array))
		throw new Trouble([`${path} was not saved, since it could not be read again:`, ...bytes]);
	try {
		withTrouble(dirname(path), () => makeFolder(dirname(path)));
		createFile(path, bytes, write);
	} catch (error) {
		throw fileTrouble(error, path);
	}

	return {mark: markOf(bytes)};
}
