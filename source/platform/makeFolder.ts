import fs from 'node:fs';
import {dirname} from 'node:path';
import {errorCode} from './fileTrouble.ts';

/**
Makes a folder and those above it that are missing. Step by step, since the recursive call of Node 20 never returns where
a folder above exists but takes none, as in /proc.

@throws The file system's error.
*/
export function makeFolder(path: string): void {
	if (fs.existsSync(path) && !fs.statSync(path).isDirectory())
		throw Object.assign(new Error(`${path} is no folder`), {code: 'ENOTDIR'});
	const missing: string[] = [];
	for (let folder = path; !fs.existsSync(folder) && dirname(folder) !== folder; folder = dirname(folder))
		missing.push(folder);
	for (const folder of missing.toReversed()) {
		try {
			fs.mkdirSync(folder);
		} catch (error) {
			// Another process may have made it at the same moment.
			if (errorCode(error) !== 'EEXIST') throw error;
		}
	}
}
