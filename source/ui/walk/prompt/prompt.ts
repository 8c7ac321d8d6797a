import type {WalkPlace} from '../places.ts';

/** Where and when an answer is taken. */
export type Taking = {
	/** Time of day for the record, ISO 8601; the interface brings the clock. */
	readonly takenAt: string;
	/** Which of the prompt's values the answer corrects; otherwise a reading is a repeat. */
	readonly correcting?: number;
};

/** What became of a typed text. `next` is the subject with the answer in it. */
export type TakenAnswer<Subject> =
	| {
			readonly kind: 'taken';
			readonly next: Subject;
			/** How it was read, such as `9′ 4 1/2″ = 2.86 m`. */
			readonly readAs: string;
			/** A reason to doubt the value; it is asked about once. */
			readonly doubt?: string;
			/** Words to show with it, such as a caution. */
			readonly hint?: string;
			/** What the screen does for it: write the test signals beside the profile, and say how to play noise, or tones. */
			readonly wish?: 'signals' | 'tones';
	  }
	| {readonly kind: 'ask'; readonly question: string; readonly choices: readonly AskedChoice<Subject>[]}
	| {readonly kind: 'no'; readonly why: string};

export type AskedChoice<Subject> = {
	readonly label: string;
	/** How the value was read, where the label tells something else. */
	readonly said?: string;
	readonly next: Subject;
	/** A reason to doubt this choice; it is asked about once. */
	readonly doubt?: string;
	readonly hint?: string;
};

export type Choice = {readonly label: string; readonly hint?: string};

/**
One question as data. The subject is what the answers go into: a profile, or the draft of one.
Functions are pure: they return a new subject.
*/
export type Prompt<Subject> = {
	/** Stable, so that a walk resumes at it: `tape:FL:sofa`. */
	readonly id: string;
	readonly stop: WalkPlace;
	/** The question, large: a few words. */
	readonly question: string;
	/** What to do with the hands, one line. */
	readonly about?: string;
	/**
	- `reading`: digits; letters are commands while nothing is typed.
	- `text`: letters are text.
	- `choice`: a number from the list.
	- `page`: a screen of its own.
	*/
	readonly kind: 'reading' | 'text' | 'choice' | 'page';
	/** Unit shown beside the value. */
	readonly unit?: string;
	readonly choices?: readonly Choice[];
	/** Choice taken by Enter alone, from 0. */
	readonly usual?: number;
	/** Text taken by Enter alone where nothing is answered yet. */
	readonly usualText?: string;
	readonly isRequired: boolean;
	/** Optional, but it comes by itself once where it helps, and Enter passes it. */
	readonly isOffered?: boolean;
	/** Questions that passing this one passes too. */
	readonly passesAlso?: readonly string[];
	/** What stands with the question: the settings where not told. */
	readonly beside?: 'plan';
	/** Values so far, as shown; a value that was set aside is told in words. */
	readonly values: readonly string[];
	/** Index of the value that a new one would replace: the last that counts. Absent where an answer always replaces. */
	readonly replaces?: number;
	/** Whether it counts as answered; values that were set aside do not. */
	readonly isAnswered: boolean;
	/** One line for `?`. */
	readonly explain: string;
	/** A small drawing for `?`, lines of equal meaning to `explain`. */
	readonly drawing?: readonly string[];
	/** Where the act can hurt: the full text, shown until the act was begun in this place. */
	readonly caution?: string;
	/** One short line for every question after that; the first sentence where absent. */
	readonly briefCaution?: string;
	/** Row of the settings table that it is about. */
	readonly row?: string;
	readonly take: (subject: Subject, text: string, taking: Taking) => TakenAnswer<Subject>;
	/** Sets a value aside, or takes it back in. Absent where there is nothing to set aside. */
	readonly setAside?: (subject: Subject, index: number) => Subject;
};
