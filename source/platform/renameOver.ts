import fs from 'node:fs';
import {errorCode} from './fileTrouble.ts';

/** What Windows answers while another program, such as a scanner for viruses, has one of the files open. */
const passing: ReadonlySet<string> = new Set(['EPERM', 'EACCES', 'EBUSY']);
const waits = 40;
const waitMs = 25;

/**
Puts one file in the place of another. Windows refuses that while anybody has one of them open, mostly for moments: there
it is tried again for a second.

@throws The file system's error.
*/
export function renameOver(from: string, to: string, isWindows = process.platform === 'win32'): void {
	for (let attempt = 0; ; attempt++) {
		try {
			fs.renameSync(from, to);
			return;
		} catch (error) {
			if (!isWindows || attempt >= waits || !passing.has(errorCode(error) ?? '')) throw error;
			Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, waitMs);
		}
	}
}
