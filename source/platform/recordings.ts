import fs from 'node:fs';
import {homedir} from 'node:os';
import {extname, join, resolve} from 'node:path';

/** What recorders save and this program can read. */
const endings = new Set(['.wav', '.wave', '.m4a', '.mp4', '.aac', '.mp3', '.ogg', '.oga', '.opus', '.flac']);

/** A sound file in a folder; `changedMs` is when it was last written. */
export type SoundEntry = {
	readonly path: string;
	readonly name: string;
	readonly bytes: number;
	readonly changedMs: number;
};

/** The folder where recordings are looked for: the one given, else the one that ROOMTARE_RECORDINGS names, else Downloads. */
export function recordingsFolder(
	given?: string,
	environment: Readonly<Record<string, string | undefined>> = process.env,
): string {
	const named = given ?? environment.ROOMTARE_RECORDINGS;
	return named ? resolve(named) : join(homedir(), 'Downloads');
}

/** Sound files of a folder, the latest first; `undefined` where it cannot be read. */
export function soundFilesIn(folder: string): SoundEntry[] | undefined {
	let names: string[];
	try {
		names = fs.readdirSync(folder);
	} catch {
		return undefined;
	}

	return names
		.filter(name => endings.has(extname(name).toLowerCase()) && !name.startsWith('.'))
		.flatMap((name): SoundEntry[] => {
			const path = join(folder, name);
			try {
				const {size, mtimeMs} = fs.statSync(path);
				return [{path, name, bytes: size, changedMs: mtimeMs}];
			} catch {
				// Gone since the folder was read.
				return [];
			}
		})
		.toSorted((a, b) => b.changedMs - a.changedMs);
}

/** Whether a typed path, `~` for home, is a file or a folder. */
export function typedPath(typed: string): {
	readonly kind: 'file' | 'folder' | 'none';
	readonly path: string;
} {
	// A path that was dragged into a terminal comes with quotes or with its spaces marked.
	const plain = typed.replace(/^(['"])(.*)\1$/, '$2').replaceAll('\\ ', ' ');
	const path = resolve(plain === '~' || plain.startsWith('~/') ? join(homedir(), plain.slice(1)) : plain);
	const stats = fs.statSync(path, {throwIfNoEntry: false});
	return {kind: stats?.isFile() ? 'file' : stats?.isDirectory() ? 'folder' : 'none', path};
}
