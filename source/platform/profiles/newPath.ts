import {join} from 'node:path';
import {slugOf} from './fileName.ts';

/** Path of a new profile in a folder, made from its name. */
export function newProfilePath(folder: string, name: string): string {
	return join(folder, `${slugOf(name)}.json`);
}
