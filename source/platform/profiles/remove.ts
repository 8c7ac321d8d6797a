import fs from 'node:fs';
import {basename, dirname, join} from 'node:path';
import {withTrouble} from '../fileTrouble.ts';
import {makeFolder} from '../makeFolder.ts';
import {freePath} from './freePath.ts';

/** Folder beside the profiles that those taken out of the list are moved to. Nothing is ever deleted from the disk. */
const folderName = 'deleted';

/**
Takes a profile out of its folder: moves it to the folder `deleted` there, numbered where such a name stands already.

@throws {Trouble} If the disk or the folder refuses.
*/
export function removeProfileFile(path: string): {readonly removed: string; readonly folder: string} {
	const folder = join(dirname(path), folderName);
	const removed = freePath(folder, basename(path).replace(/\.json$/i, ''));
	withTrouble(path, () => {
		makeFolder(folder);
		fs.renameSync(path, removed);
	});
	return {removed, folder};
}

/**
Brings a profile back from the folder `deleted`; over no other file.

@returns Its path.
@throws {Trouble} If the disk or the folder refuses.
*/
export function restoreProfileFile(removed: string): string {
	const path = freePath(dirname(dirname(removed)), basename(removed).replace(/\.json$/i, ''));
	withTrouble(path, () => fs.renameSync(removed, path));
	return path;
}
