import {Trouble} from './trouble.ts';

const reasons: Readonly<Record<string, readonly [what: string, remedy: string]>> = {
	ENOENT: ['does not exist', 'Check the name; “roomtare list” shows the profiles there are.'],
	ENOTDIR: ['has a file where a folder should be', 'Give another folder with --profiles DIR.'],
	EISDIR: ['is a folder, not a file', 'Name a profile in it.'],
	EACCES: [
		'may not be touched by this user',
		'Change its permissions, or use another folder with --profiles DIR.',
	],
	EPERM: [
		'may not be touched by this user',
		'Change its permissions, or use another folder with --profiles DIR.',
	],
	EROFS: ['is on a disk that cannot be written', 'Use another folder with --profiles DIR.'],
	ENOSPC: ['does not fit: the disk is full', 'Make room and save again; the old version stands.'],
	EDQUOT: [
		'does not fit: your share of the disk is full',
		'Make room and save again; the old version stands.',
	],
	EFBIG: ['is larger than files may be here', 'Use another folder with --profiles DIR.'],
	EEXIST: ['exists already', 'Choose another name; nothing was overwritten.'],
	EMFILE: ['cannot be opened: too many files are open', 'Close other programs and try again.'],
	ENAMETOOLONG: ['has too long a name', 'Choose a shorter one.'],
	ELOOP: ['is a link that leads in a circle', 'Name the file itself.'],
	EIO: ['cannot be reached: the disk reports a fault', 'Copy your files elsewhere and check the disk.'],
};

/** Whether an error comes from the file system, and its code. */
export function errorCode(error: unknown): string | undefined {
	const code = error instanceof Error && 'code' in error ? error.code : undefined;
	return typeof code === 'string' ? code : undefined;
}

/**
Words for an error of the file system: which file, what is wrong with it, and what to do.

@returns Trouble to throw; an error of any other kind comes back as it was, since it is a fault of the program.
*/
export function fileTrouble(error: unknown, path: string): unknown {
	const code = errorCode(error);
	if (error instanceof Trouble || code === undefined) return error;
	const [what, remedy] = reasons[code] ?? [`cannot be used (${code})`, 'Check the disk and the folder.'];
	return new Trouble(`${path} ${what}. ${remedy}`);
}

/** Runs an action on a file and turns what the file system refuses into words. */
export function withTrouble<Result>(path: string, action: () => Result): Result {
	try {
		return action();
	} catch (error) {
		throw fileTrouble(error, path);
	}
}
