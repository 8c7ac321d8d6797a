import fs from 'node:fs';
import {basename} from 'node:path';
import {createFile} from '../atomicWrite.ts';
import {withTrouble} from '../fileTrouble.ts';
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
		fs.mkdirSync(folder, {recursive: true});
		createFile(target, bytes);
	});
	return {path: target, mark: markOf(bytes)};
}
