import fs from 'node:fs';
import {fileURLToPath} from 'node:url';

/**
The folder of the profiles that come with the program, or undefined where they are not there. From the source it is two
folders up, from the bundle one or two.
*/
export function shippedFolder(): string | undefined {
	return ['../profiles', '../../profiles', '../../../profiles']
		.map(relative => fileURLToPath(new URL(relative, import.meta.url)))
		.find(folder => fs.existsSync(`${folder}/cellar-2026.json`));
}
