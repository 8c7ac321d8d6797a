import fs from 'node:fs';
import {join} from 'node:path';
import {decodeText, largestBytes} from '../../profile/file/json/decode.ts';
import {type Summary, summarise} from '../../profile/summary.ts';
import {errorCode, fileTrouble} from '../fileTrouble.ts';
import {isProfileFile} from './fileName.ts';

export type ListedProfile = {
	readonly path: string;
	/** File name without its ending; what commands take. */
	readonly id: string;
	readonly summary?: Summary;
	/** Why it cannot be listed, in words. */
	readonly problem?: string;
};

/**
The profiles of a folder, newest first, those that cannot be read last. A folder that does not exist yet holds none.
Files are only looked at as far as the list needs; whether all of a profile is sound shows when it is opened.

@throws {Trouble} If the folder may not be read or is no folder.
*/
export function listProfiles(folder: string): ListedProfile[] {
	let names: string[];
	try {
		names = fs.readdirSync(folder);
	} catch (error) {
		if (errorCode(error) === 'ENOENT') return [];
		throw fileTrouble(error, folder);
	}

	return names
		.filter(name => isProfileFile(name))
		.map(name => listOne(join(folder, name), name.replace(/\.json$/i, '')))
		.toSorted(
			(one, other) =>
				(other.summary?.date ?? '').localeCompare(one.summary?.date ?? '') || one.id.localeCompare(other.id),
		);
}

function listOne(path: string, id: string): ListedProfile {
	try {
		const stats = fs.statSync(path);
		// A pipe would wait for its other end for good.
		if (!stats.isFile()) return {path, id, problem: 'not a file'};
		if (stats.size > largestBytes) return {path, id, problem: 'too large for a profile'};
		const decoded = decodeText(fs.readFileSync(path));
		if ('problem' in decoded) return {path, id, problem: decoded.problem.value.toLowerCase()};
		const summary = summarise(JSON.parse(decoded.text));
		return summary ? {path, id, summary} : {path, id, problem: 'not a profile'};
	} catch (error) {
		return {
			path,
			id,
			problem:
				error instanceof SyntaxError ? 'not JSON' : `cannot be read (${errorCode(error) ?? 'unknown'})`,
		};
	}
}
