import fs from 'node:fs';
import {join} from 'node:path';

/** Temporary files of profiles and their locks, as a killed save leaves them. */
const litter = /\.json(?:\.lock|\.open\.lock)?\.[0-9a-f]{12}\.tmp$/i;
/** A save takes milliseconds; what is as old as this belongs to nobody any more. */
const oldMs = 3_600_000;

/** Removes what killed saves left in a folder, an hour after. What cannot be removed stays: it harms nobody. */
export function sweepFolder(folder: string, now: Date): void {
	try {
		for (const name of fs.readdirSync(folder)) {
			if (!litter.test(name)) continue;
			const path = join(folder, name);
			if (now.getTime() - fs.statSync(path).mtimeMs > oldMs) fs.rmSync(path, {force: true});
		}
	} catch {}
}
