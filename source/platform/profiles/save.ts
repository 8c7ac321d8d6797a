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
import {previousPath} from './fileName.ts';
import {markOf} from './read.ts';

export type SaveResult =
	| {readonly kind: 'saved'; readonly mark: string}
	/** Somebody else wrote or removed the file since it was read. Nothing was written. */
	| {readonly kind: 'changed-elsewhere'; readonly text: string}
	/** Another process works on the file. Nothing was written. */
	| {readonly kind: 'held-elsewhere'; readonly text: string};

/** What a save needs of the world besides the file. */
export type SaveOptions = {
	readonly now?: Date;
	readonly write?: WriteBytes;
};

/** Another save takes milliseconds; waiting for it beats bothering the user. */
const waits = 20;
const waitMs = 15;

function bytesOf(profile: Profile, path: string): Uint8Array {
	const problems = checkProfile(profile);
	if (problems.length > 0) {
		throw new Trouble([
			`${path} was not saved, since it could not be read again:`,
			...problemLines(problems, 10),
		]);
	}

	return new TextEncoder().encode(serialiseProfile(profile));
}

/**
Saves over a profile, all or nothing, and keeps the version before. Done, and on the disk, when it returns.

@param mark - Mark of the content that the change started from; undefined writes whatever stands there.
@throws {Trouble} If the profile could not be read again, or the disk or the folder refuses; the old file stands then.
*/
export function saveProfile(
	path: string,
	profile: Profile,
	mark: string | undefined,
	options: SaveOptions = {},
): SaveResult {
	const bytes = bytesOf(profile, path);
	return withTrouble(path, () => {
		const lock = waitForLock(path, options.now ?? new Date());
		if (lock.kind === 'held-elsewhere')
			return {kind: 'held-elsewhere', text: `${lock.text} Close it there first.`};
		try {
			if (mark !== undefined) {
				const standing = standingMark(path);
				if (standing !== mark)
					return {kind: 'changed-elsewhere', text: changedText(path, standing === undefined)};
			}

			const newMark = markOf(bytes);
			// The same content again would push the previous version out for nothing.
			if (newMark !== mark) replaceFile(path, bytes, previousPath(path), options.write);
			return {kind: 'saved', mark: newMark};
		} finally {
			lock.release();
		}
	});
}

function waitForLock(path: string, now: Date): Lock {
	const pause = new Int32Array(new SharedArrayBuffer(4));
	let lock = takeLock(path, now);
	for (let wait = 0; wait < waits && lock.kind === 'held-elsewhere'; wait++) {
		Atomics.wait(pause, 0, 0, waitMs);
		lock = takeLock(path, now);
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

@throws {Trouble} If something stands there already, or the disk or the folder refuses.
*/
export function createProfileFile(
	path: string,
	profile: Profile,
	write?: WriteBytes,
): {readonly mark: string} {
	const bytes = bytesOf(profile, path);
	try {
		withTrouble(dirname(path), () => makeFolder(dirname(path)));
		createFile(path, bytes, write);
	} catch (error) {
		throw fileTrouble(error, path);
	}

	return {mark: markOf(bytes)};
}
