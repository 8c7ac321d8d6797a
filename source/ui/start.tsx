import type {Files} from './files.ts';

export type Start = {
	readonly files: Files;
	/** Opens the walk of this profile at once; without it the home screen is shown. */
	readonly file?: string;
	readonly now: () => Date;
	/** Streams of the terminal; those of the process where not given. */
	readonly stdin?: NodeJS.ReadStream;
	readonly stdout?: NodeJS.WriteStream;
};
