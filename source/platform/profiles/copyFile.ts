import fs from 'node:fs';
import {basename, join, resolve} from 'node:path';
import {isDeepStrictEqual} from 'node:util';
import {createFile} from '../atomicWrite.ts';
import {withTrouble} from '../fileTrouble.ts';
import {makeFolder} from '../makeFolder.ts';
import {slugOf} from './fileName.ts';
import {freePath} from './freePath.ts';
import {markOf, readProfileFile} from './read.ts';

/**
Copies a profile, byte for byte, to a new file in a folder; makes the folder where it is missing.

@throws {Trouble} If the profile cannot be read, or the disk or the folder refuses.
*/
export function copyProfileFile(
	path: string,
	folder: string,
): {readonly path: string; readonly mark: string} {
	const {bytes} = readProfileFile(path);
	const target = freePath(folder, basename(path).replace(/\.json$/i, ''));
	withTrouble(target, () => {
		makeFolder(folder);
		createFile(target, bytes);
	});
	return {path: target, mark: markOf(bytes)};
}

/**
A copy of a profile in a folder that nothing was entered into since: equal but for where the walk stands.

@returns The first such copy; undefined where there is none.
@throws {Trouble} If the profile cannot be read.
*/
export function untouchedCopy(
	path: string,
	folder: string,
): {readonly path: string; readonly mark: string} | undefined {
	const original = contentOf(readProfileFile(path).bytes);
	const slug = slugOf(basename(path).replace(/\.json$/i, ''));
	for (let count = 1; ; count++) {
		const copy = join(folder, count === 1 ? `${slug}.json` : `${slug}-${count}.json`);
		if (!fs.existsSync(copy)) return undefined;
		if (resolve(copy) === resolve(path)) continue;
		const bytes = bytesOrNothing(copy);
		if (bytes && original !== undefined && isDeepStrictEqual(contentOf(bytes), original))
			return {path: copy, mark: markOf(bytes)};
	}
}

/** What a file says apart from where the walk stands; undefined where it is no JSON. */
function contentOf(bytes: Uint8Array): unknown {
	try {
		const {walk, ...content} = JSON.parse(new TextDecoder().decode(bytes)) as Record<string, unknown>;
		return content;
	} catch {
		return undefined;
	}
}

function bytesOrNothing(path: string): Uint8Array | undefined {
	try {
		return readProfileFile(path).bytes;
	} catch {
		// A copy that cannot be read is not used; another is made.
		return undefined;
	}
}
