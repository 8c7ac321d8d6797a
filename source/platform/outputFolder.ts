import {randomBytes} from 'node:crypto';
import fs from 'node:fs';
import {join} from 'node:path';
import {withTrouble} from './fileTrouble.ts';
import {makeFolder} from './makeFolder.ts';
import {renameOver} from './renameOver.ts';
import {Trouble} from './trouble.ts';

/**
Writes beside and renames, so that no half file ever has the name. It is not forced to the disk before it returns:
results can be made again, and a power cut costs nothing that was typed in.
*/
function writeWhole(path: string, bytes: Uint8Array, replaces: boolean): void {
	const temporary = `${path}.${randomBytes(6).toString('hex')}.tmp`;
	try {
		fs.writeFileSync(temporary, bytes, {flag: 'wx'});
		if (!replaces && fs.existsSync(path))
			throw new Trouble(`${path} exists already; it was left as it is. Give --force to replace it.`);
		renameOver(temporary, path);
	} catch (error) {
		fs.rmSync(temporary, {force: true});
		throw error;
	}
}

/**
A folder to write result files to, made where it is missing.

@param names - All files that are to be written; where any exists and may not be replaced, none is.
@returns A function that writes one of them: whole or not at all.
@throws {Trouble} If the folder cannot be made, or a file exists already and `replaces` is false.
*/
export function outputFolder(
	folder: string,
	names: readonly string[],
	replaces: boolean,
): (name: string, bytes: Uint8Array) => void {
	withTrouble(folder, () => makeFolder(folder));
	const standing = names.filter(name => fs.existsSync(join(folder, name)));
	if (standing.length > 0 && !replaces) {
		const more = standing.length > 3 ? ` and ${standing.length - 3} more` : '';
		throw new Trouble(
			`${folder}: ${standing.slice(0, 3).join(', ')}${more} exist already; nothing was written. Give another folder, or --force to replace them.`,
		);
	}

	return (name, bytes) => {
		const path = join(folder, name);
		withTrouble(path, () => writeWhole(path, bytes, replaces));
	};
}
