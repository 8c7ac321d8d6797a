import {dirname} from 'node:path';
import {withTrouble} from '../fileTrouble.ts';
import {type Lock, takeLock} from '../lock.ts';
import {sweepFolder} from '../sweep.ts';

/**
Marks a profile as open here for as long as somebody works on it, so that a second one who opens it is told. Apart from
the lock of a save, which lasts milliseconds: this one keeps nobody from writing. One left by a process that is gone is
taken over, and what killed saves left in the folder is swept.

@param isForced - Takes the mark from whoever has it.
@throws {Trouble} If the mark cannot be written.
*/
export function holdProfile(path: string, now: Date, isForced = false): Lock {
	sweepFolder(dirname(path), now);
	return withTrouble(path, () => takeLock(path, now, {name: `${path}.open.lock`, isForced}));
}
