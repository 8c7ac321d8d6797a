import type {Profile} from '../profile/types.ts';

/** One profile in the list, newest first; a file that cannot be read is listed with its problem. */
export type Listed = {
	/** What `load`, `save` and `copy` take; opaque to the interface. */
	readonly file: string;
	readonly name: string;
	/** Day of the profile, YYYY-MM-DD; empty where the file cannot be read. */
	readonly date: string;
	/** Comes with the program: it may be looked at and copied, but is never changed. */
	readonly isShipped: boolean;
	readonly problem?: string;
};

/** What was read, and a mark of the file's state that `save` holds against the disk. */
export type Loaded =
	| {readonly ok: true; readonly profile: Profile; readonly mark: string}
	| {readonly ok: false; readonly text: string};

/**
What became of a save. `otherFile`: where the version of another program is kept that was written over.
`changed`: another program wrote the file since it was read, nothing was overwritten. `busy`: another one says to be saving
it. `failed`: the disk or the folder refused; the old version stands. `unsound`: it could not be read again.
*/
export type Saved =
	| {readonly ok: true; readonly mark: string; readonly otherFile?: string}
	| {
			readonly ok: false;
			readonly why: 'changed' | 'busy' | 'failed' | 'unsound';
			readonly text: string;
	  };

export type Created =
	| {readonly ok: true; readonly file: string; readonly mark: string}
	| {readonly ok: false; readonly text: string};

export type Written =
	| {readonly ok: true; readonly path: string}
	| {readonly ok: false; readonly text: string};

/** `removed` is what `restore` takes; opaque to the interface. */
export type TakenOut =
	| {readonly ok: true; readonly removed: string; readonly folder: string}
	| {readonly ok: false; readonly text: string};

/** Whether a file is marked as open here; `text` says who has it open instead. */
export type HeldFile = {readonly ok: true} | {readonly ok: false; readonly text: string};

/** The user's files as the interface sees them. Every call is synchronous and done when it returns. */
export type Files = {
	readonly list: () => readonly Listed[];
	readonly load: (file: string) => Loaded;
	/**
	Writes over `file` if its state is still `mark`. `isForced` writes whatever the state and whoever says to be saving; what
	stood there is kept.
	*/
	readonly save: (file: string, profile: Profile, mark: string, isForced?: boolean) => Saved;
	/** Writes a new file whose name is made from the profile's name and date; never over another. */
	readonly create: (profile: Profile) => Created;
	/** The same when the app is left and the file itself refuses: in the user's folder, else wherever there is room. */
	readonly rescue: (profile: Profile) => Created;
	/** Writes a text beside the profile's file, named after it with this ending; never over another file. */
	readonly writeBeside: (file: string, ending: string, text: string) => Written;
	/** Writes the test signals for a profile into a folder beside its file, named after it, with a text on how to play them. */
	readonly writeSignals: (file: string, profile: Profile) => Written;
	/** Marks a file as open here, so that whoever opens it too is told. `isForced` takes the mark from another. */
	readonly hold: (file: string, isForced?: boolean) => HeldFile;
	/** Takes that mark away again. */
	readonly release: (file: string) => void;
	/** Takes a profile out of the list: moved, with its previous version, to the folder `deleted` beside it. */
	readonly remove: (file: string) => TakenOut;
	/** Brings a profile back that was taken out. */
	readonly restore: (removed: string) => Created;
	/** Copies a profile, byte for byte, to the user's folder; an earlier copy that nothing was entered into is used again. */
	readonly copy: (file: string) => Created;
};
