import fs from 'node:fs';
import {basename, dirname, join} from 'node:path';
import {visibleText} from '../../profile/visibleText.ts';
import {createFile} from '../atomicWrite.ts';
import {withTrouble} from '../fileTrouble.ts';

/**
Writes a text file beside a profile, named after it: `cellar-2026-door.html`. Numbered where such a file stands already;
nothing is overwritten.

@param ending - What follows the profile's name: `-door.html`.
@returns The path written.
@throws {Trouble} If the disk or the folder refuses.
*/
export function writeBeside(profilePath: string, ending: string, text: string): string {
	const base = join(dirname(profilePath), basename(profilePath).replace(/\.json$/i, ''));
	const [, stem, extension] = /^(.*?)(\.[^.]*)?$/.exec(ending)!;
	for (let count = 1; ; count++) {
		const path = `${base}${stem}${count === 1 ? '' : `-${count}`}${extension ?? ''}`;
		if (fs.existsSync(path)) continue;
		withTrouble(path, () => createFile(path, new TextEncoder().encode(visibleText(text))));
		return path;
	}
}
