import fs from 'node:fs';
import {join} from 'node:path';
import {decodeText, largestBytes} from '../../profile/file/json/decode.ts';
import {errorCode, fileTrouble} from '../fileTrouble.ts';
import {isProfileFile} from './fileName.ts';

/** A file of the folder: its JSON as parsed and not yet checked, or why it cannot be read. */
export type ParsedFile = {
	/** File name without its ending. */
	readonly id: string;
	readonly value?: unknown;
	readonly problem?: string;
};

/**
Every profile file of a folder, parsed but not checked, for views over all of them: one after the other, so that a
thousand need no more memory than one. A folder that does not exist holds none.

@throws {Trouble} If the folder may not be read or is no folder.
*/
export function* readAllFiles(folder: string): Generator<ParsedFile, void> {
	let names: string[];
	try {
		names = fs.readdirSync(folder);
	} catch (error) {
		if (errorCode(error) === 'ENOENT') return;
		throw fileTrouble(error, folder);
	}

	for (const name of names)
		if (isProfileFile(name)) yield readOne(join(folder, name), name.replace(/\.json$/i, ''));
}

function readOne(path: string, id: string): ParsedFile {
	try {
		const stats = fs.statSync(path);
		if (!stats.isFile()) return {id, problem: 'not a file'};
		if (stats.size > largestBytes) return {id, problem: 'too large for a profile'};
		const decoded = decodeText(fs.readFileSync(path));
		if ('problem' in decoded) return {id, problem: decoded.problem.value.toLowerCase()};
		return {id, value: JSON.parse(decoded.text)};
	} catch (error) {
		const isSyntax = error instanceof SyntaxError;
		return {id, problem: isSyntax ? 'not JSON' : `cannot be read (${errorCode(error) ?? 'unknown'})`};
	}
}
