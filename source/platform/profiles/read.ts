import fs from 'node:fs';
import {createRequire} from 'node:module';
import {largestBytes} from '../../profile/file/json/decode.ts';
import {fileTrouble, withTrouble} from '../fileTrouble.ts';
import {Trouble} from '../trouble.ts';

/** Bytes of a file and what makes a mark of this very content: a function, since only what saves asks for it. */
export type FileContent = {readonly bytes: Uint8Array; readonly mark: () => string};

/** Loading it takes milliseconds. */
const builtIn = createRequire(import.meta.url);

/** The mark of some content: equal marks, equal bytes. */
export function markOf(bytes: Uint8Array): string {
	const {createHash} = builtIn('node:crypto') as typeof import('node:crypto');
	return createHash('sha256').update(bytes).digest('hex');
}

/**
Reads a file whole.

@throws {Trouble} If it is missing, may not be read, is no file, or is larger than any profile.
*/
export function readProfileFile(path: string): FileContent {
	const stats = withTrouble(path, () => fs.statSync(path));
	if (stats.isDirectory()) throw fileTrouble(Object.assign(new Error(path), {code: 'EISDIR'}), path);
	if (!stats.isFile())
		throw new Trouble(
			`${path} is a pipe or a device, not a file. Name a file, or give - to read standard input.`,
		);
	if (stats.size > largestBytes)
		throw new Trouble(`${path} has more than 64 MiB. This can be no profile. Check the file name.`);
	const bytes = withTrouble(path, () => fs.readFileSync(path));
	return {bytes, mark: () => markOf(bytes)};
}
