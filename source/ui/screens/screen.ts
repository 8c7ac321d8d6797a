import type {LengthUnit, Profile} from '../../profile/types.ts';
import type {RoomHistory} from '../../study/comparison/history/historyEntry.ts';
import type {Files, Listed} from '../files.ts';
import type {HearingState} from '../hearing/state.ts';
import type {Planning} from '../planning/planning.ts';
import type {Recordings} from '../recordings.ts';
import type {Searches} from '../searches.ts';
import type {OpenPage} from '../walk/page.ts';
import type {Note, RoundState} from '../walk/state.ts';
import type {Draft} from './draft.ts';

export type HomeScreen = {
	readonly kind: 'home';
	readonly entries: readonly Listed[];
	/** Row that the cursor stands on: an entry, or one past the last for "new". */
	readonly cursor: number;
	/** File marked as the older side of a comparison. */
	readonly marked?: string;
	readonly notes: readonly Note[];
	readonly isHelpShown: boolean;
	/** What `u` brings back: a profile that was taken out of the list. */
	readonly removed?: string;
	/** A new name that is being typed for the chosen profile. */
	readonly renaming?: string;
};

/** The profiles of one room, oldest to newest. */
export type HistoryScreen = {
	readonly kind: 'history';
	readonly history: RoomHistory;
	readonly lengthUnit: LengthUnit;
	/** File to choose at home afterwards. */
	readonly file: string;
	/** First row shown. */
	readonly from: number;
};

/** A few questions before a profile exists. */
export type CreateScreen = {readonly kind: 'create'; readonly state: RoundState<Draft>};

/** Why a save was refused, or a file not opened at once. */
export type Refusal = {
	readonly why: 'changed' | 'busy' | 'failed' | 'unsound' | 'held';
	readonly text: string;
};

/** A refusal that is being decided about. */
export type RefusedSave = Refusal & {
	/** What was typed so far; only Enter decides. */
	readonly typed?: string;
	/** The way, from 0, that gives something up and is asked about once more. */
	readonly doubted?: number;
};

export type WalkScreen = {
	readonly kind: 'walk';
	readonly file: string;
	/** State of the file as last seen; saves are held against it. */
	readonly mark: string;
	readonly state: RoundState<Profile>;
	/** The page that is shown, by its id. */
	readonly page?: {readonly id: string; readonly open: OpenPage};
	/** The profile before the latest change: values that moved since are told. */
	readonly previous?: Profile;
	/** A save that was refused, or another app that has the file open (`held`), until the user has decided. */
	readonly trouble?: RefusedSave;
	/** A save of the place alone that was refused: told in the header, and asked about at the next Enter. */
	readonly refusal?: Refusal;
	/** The user goes on without the disk: further refusals are told in the header only. */
	readonly goesOn?: boolean;
	/** Another app has the file open too: looking around writes nothing. */
	readonly isShared?: boolean;
	/** Answers are in memory that the disk has not. */
	readonly isUnsaved: boolean;
	/** The prompt that the file on disk would resume at. */
	readonly keptPromptId?: string;
	/** A recorded round that was left for the walk; hearing goes on. */
	readonly hearing?: HearingState;
};

/** A recorded round, from the file to what is taken of its recordings. */
export type HearingScreen = {
	readonly kind: 'hearing';
	/** The walk that it was opened from, and goes back to. */
	readonly back: WalkScreen;
	readonly hearing: HearingState;
};

export type CompareScreen = {
	readonly kind: 'compare';
	/** The walk that it was opened from, and goes back to; home where there is none. */
	readonly back?: WalkScreen;
	/** Older profiles to compare that walk's with, and the one that is shown. */
	readonly choices?: readonly string[];
	readonly chosen?: string;
	readonly older: Profile;
	readonly newer: Profile;
	/** First line shown. */
	readonly from: number;
	/** Every change with every part of its cause. */
	readonly isFull?: boolean;
	/** The floor plans of both in the place of the text. */
	readonly isPlanShown?: boolean;
};

/** The room before anything is lifted. */
export type PlanningScreen = {
	readonly kind: 'planning';
	readonly file: string;
	/** The file comes with the program: what is changed goes into a copy, which is made then. */
	readonly isShipped?: boolean;
	/** State of the file as last seen; saves are held against it. */
	readonly mark: string;
	readonly plan: Planning;
	/** A search was ordered from another thread, and is on its way there. */
	readonly isSearched?: boolean;
};

export type AppScreen =
	| HistoryScreen
	| HomeScreen
	| CreateScreen
	| WalkScreen
	| CompareScreen
	| HearingScreen
	| PlanningScreen
	| {readonly kind: 'left'};

/** What the screens reach of the outside. */
export type World = {
	readonly files: Files;
	readonly now: () => Date;
	/** Absent where no recording can be reached. */
	readonly recordings?: Recordings;
	/** Absent where there are no other threads: searches then run here, in slices. */
	readonly searches?: Searches;
};
