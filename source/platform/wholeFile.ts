import fs from 'node:fs';
import {basename} from 'node:path';
import {withTrouble} from './fileTrouble.ts';
import {Trouble} from './trouble.ts';

/** What is said of a file that cannot be read as what it ought to be; each a whole sentence or two after the path. */
export type FileKind = {
	/** “a recording”, “a file with a curve”. */
	readonly what: string;
	readonly ifEmpty: string;
	readonly largestBytes: number;
	readonly ifTooLarge: string;
};

/**
Reads a file whole.

@returns Its bytes and base name.
@throws {Trouble} If it is missing, may not be read, is a folder, a pipe or a device, is empty, or is larger than such a file can be.
*/
export function readWholeFile(
	path: string,
	{what, ifEmpty, largestBytes, ifTooLarge}: FileKind,
): {readonly bytes: Uint8Array; readonly name: string} {
	const stats = withTrouble(path, () => fs.statSync(path, {throwIfNoEntry: false}));
	if (!stats) throw new Trouble(`There is no file ${path}. Check its folder and name, ending included.`);
	if (stats.isDirectory()) throw new Trouble(`${path} is a folder, not ${what}. Name the files in it.`);
	// A pipe that nobody writes into would be waited for.
	if (!stats.isFile())
		throw new Trouble(`${path} is a pipe or a device, not ${what}. Name a file on a disk.`);
	if (stats.size === 0) throw new Trouble(`${path} is empty. ${ifEmpty}`);
	if (stats.size > largestBytes) throw new Trouble(`${path} ${ifTooLarge}`);
	return {bytes: withTrouble(path, () => fs.readFileSync(path)), name: basename(path)};
}

/** Text columns of the longest sweep at the finest step stay far below this, bytes. */
const largestCurveBytes = 64 * 2 ** 20;

/**
Reads a file of text columns.

@throws {Trouble} If it is missing, may not be read, is a folder, a pipe or a device, is empty, or is larger than any curve.
*/
export const readCurveFile = (path: string) =>
	readWholeFile(path, {
		what: 'a file with a curve',
		ifEmpty: 'Export the curve again: lines with a frequency in hertz and a level in dB.',
		largestBytes: largestCurveBytes,
		ifTooLarge: 'has more than 64 MiB. This can be no curve. Check the file name.',
	});
