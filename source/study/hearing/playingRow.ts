import type {LfeAgreement} from './apart/fromLfe.ts';
import type {Separated} from './apart/separate.ts';
import type {HearingFinding} from './facts.ts';
import type {HeardPlaying} from './heardPlaying.ts';
import type {HeardState} from './heardState.ts';
import type {SubGroup} from './visit.ts';

/** One playing as it is understood. */
export type PlayingRow = {
	/** Place among all playings, in the order in which they were recorded. */
	readonly index: number;
	readonly playing: HeardPlaying;
	/** Absent where there are more spots than seats. */
	readonly seat?: string;
	readonly state: HeardState;
	/** Groups of subs that were changed in it against as it stands. */
	readonly changed: readonly string[];
	/** Whether a result is taken from it. */
	readonly isUsed: boolean;
	readonly findings: readonly HearingFinding[];
};

/** What a person says of a playing, in place of what its sound says. */
export type PlayingName = {
	/** Not to be used. */
	readonly isSpare?: boolean;
	readonly seat?: string;
	/** How many groups of subs had been changed, in their order; 0 is as it stands. */
	readonly changes?: number;
};

/** By place among all playings. */
export type PlayingNames = Readonly<Record<number, PlayingName>>;

/** What was recorded at one seat. */
export type SeatRound = {
	readonly seat: string;
	/** The playing with everything as it stands. */
	readonly base: PlayingRow;
	/** Mains and subs by themselves, where enough playings were sound. */
	readonly apart?: Separated;
	/** By playings with one change, or from one playing by its LFE sweep. */
	readonly apartBy?: 'change' | 'lfe';
	/** How the LFE sweep agrees with the others, where it was asked. */
	readonly agreement?: LfeAgreement;
	/** Groups of subs of `apart`, in its order. */
	readonly groups: readonly SubGroup[];
};
