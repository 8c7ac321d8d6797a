import {readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {projectFolder, temporaryFolder} from './program.ts';

/** An invented attic under a sloped ceiling, with two subs behind a processor: what the shipped demo does not have. */
export const atticPath = join(projectFolder, 'test/fixtures/attic-2026.json');

// biome-ignore lint/suspicious/noExplicitAny: the tests break it on purpose.
type Broken = any;

/** The attic as an object that a test may break, and its text. */
export function attic(change: (profile: Broken) => void = () => {}): string {
	const profile = JSON.parse(readFileSync(atticPath, 'utf8'));
	change(profile);
	return JSON.stringify(profile);
}

/** Writes a file into a new folder and gives its path. */
export function fileWith(content: string | Uint8Array, name = 'room.json'): string {
	const path = join(temporaryFolder(), name);
	writeFileSync(path, content);
	return path;
}
