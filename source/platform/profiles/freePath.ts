import fs from 'node:fs';
import {join} from 'node:path';
import {slugOf} from './fileName.ts';

/** Path of a new file in a folder, made from a name; numbered where such a file stands already. */
export function freePath(folder: string, name: string): string {
	const slug = slugOf(name);
	for (let count = 1; ; count++) {
		const path = join(folder, count === 1 ? `${slug}.json` : `${slug}-${count}.json`);
		if (!fs.existsSync(path)) return path;
	}
}
