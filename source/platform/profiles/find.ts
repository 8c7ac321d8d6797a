import fs from 'node:fs';
import {join, resolve} from 'node:path';
import {nameRemedy} from '../../profile/file/json/nearest.ts';
import {Trouble} from '../trouble.ts';
import {slugOf} from './fileName.ts';
import {listProfiles} from './list.ts';

/** Whether there is such a file; a name that no file can have, such as one too long, is none. */
function isFile(path: string): boolean {
	try {
		return fs.statSync(path, {throwIfNoEntry: false})?.isFile() === true;
	} catch {
		return false;
	}
}

/** A word of the command line as it is quoted back; nobody reads more of it. */
const quoted = (word: string) => (word.length > 80 ? `${word.slice(0, 79)}…` : word);

/**
The file that a word on the command line means: a path, the name of a file in a folder with or without `.json`, or the
name of a profile. Folders are searched in their order; a path wins where the word looks like one.

@throws {Trouble} If there is none, or the name fits several profiles.
*/
export function findProfile(word: string, folders: readonly string[]): string {
	const looksLikePath = /[\\/]/.test(word) || /\.json$/i.test(word);
	if (looksLikePath && fs.existsSync(word)) return resolve(word);
	if (!/[\\/]/.test(word)) {
		for (const folder of folders) {
			for (const name of [word, `${word}.json`]) {
				if (/\.json$/i.test(name) && isFile(join(folder, name))) return join(folder, name);
			}
		}
	}

	if (looksLikePath) throw new Trouble(`${quoted(word)} does not exist. Check the path.`);
	const listed = folders.flatMap(folder => listProfiles(folder));
	const named = listed.filter(
		({id, summary}) => summary?.name.toLowerCase() === word.toLowerCase() || id === slugOf(word),
	);
	if (named.length === 1) return named[0]!.path;
	if (named.length > 1) {
		throw new Trouble(
			`“${quoted(word)}” fits several profiles: ${named.map(({id}) => id).join(', ')}. Name one of these.`,
		);
	}

	if (isFile(word)) return resolve(word);
	const remedy =
		listed.length === 0
			? 'There is none yet; begin with “roomtare new”.'
			: nameRemedy(
					word,
					listed.map(({id}) => id),
				);
	throw new Trouble(`There is no profile “${quoted(word)}” in ${folders[0]}. ${remedy}`);
}
