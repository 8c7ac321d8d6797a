import {readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {projectFolder, temporaryFolder} from './program.ts';

/** The newer of the profiles that come with the program. */
export const demoPath = join(projectFolder, 'profiles/attic-2026.json');

// biome-ignore lint/suspicious/noExplicitAny: the tests break it on purpose.
type Broken = any;

/** The demo as an object that a test may break, and its text. */
export function demo(change: (profile: Broken) => void = () => {}): string {
	const profile = JSON.parse(readFileSync(demoPath, 'utf8'));
	change(profile);
	return JSON.stringify(profile);
}

/** Writes a file into a new folder and gives its path. */
export function fileWith(content: string | Uint8Array, name = 'room.json'): string {
	const path = join(temporaryFolder(), name);
	writeFileSync(path, content);
	return path;
}
