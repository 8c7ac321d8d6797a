import type {Profile} from '../profile/types.ts';
import type {HearingNews, HearingOrder} from '../study/hearing/orders.ts';
import type {RoundSize} from '../study/hearing/roundCode.ts';
import type {Written} from './files.ts';

/** A sound file that lies in a folder. */
export type Arrived = {
	readonly path: string;
	/** Base name. */
	readonly name: string;
	readonly bytes: number;
	/** When it was last written, ms since 1970. */
	readonly changedMs: number;
};

/** What a typed path leads to. */
export type TypedPath =
	| {readonly kind: 'file'; readonly path: string}
	| {readonly kind: 'folder'; readonly path: string}
	| {readonly kind: 'no'; readonly text: string};

/** Recordings as the interface sees them: where they arrive, and who hears them on another thread. */
export type Recordings = {
	/** Where recordings are looked for unless told otherwise. */
	readonly usualFolder: string;
	/** Sound files of a folder, the latest first; `undefined` where it cannot be read. */
	readonly look: (folder: string) => readonly Arrived[] | undefined;
	readonly find: (typed: string) => TypedPath;
	/** Orders are done one after the other; news of them go to whoever listens. */
	readonly order: (order: HearingOrder) => void;
	/** Drops what is being heard, and all that was. */
	readonly stop: () => void;
	readonly onNews: (listener: (news: HearingNews) => void) => void;
	/** Writes a round's file and the loop for the loudness into a folder beside the profile's file. */
	readonly writeRound: (file: string, profile: Profile, size: RoundSize) => Written;
};
