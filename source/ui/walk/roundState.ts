import type {WalkPlace} from './places.ts';
import type {AskedChoice, Prompt} from './prompt/prompt.ts';

export type Note = {readonly kind: 'said' | 'doubt' | 'no' | 'note'; readonly text: string};

/** A row of the table that stands beside the questions. */
export type RoundRow = {readonly id: string; readonly name: string};

/** What a round of questions is about, as functions of its subject. */
export type Round<Subject> = {
	readonly prompts: (subject: Subject) => readonly Prompt<Subject>[];
	/** Ids of prompts that the user put off. */
	readonly skipped: (subject: Subject) => readonly string[];
	readonly withSkipped: (subject: Subject, ids: readonly string[]) => Subject;
	/** Prompt to go to from a place in which nothing needed is open; undefined where nothing follows. */
	readonly after: (subject: Subject, place: WalkPlace) => string | undefined;
	/** Where one goes on when nothing needed is open; the first page where absent. */
	readonly rest?: (subject: Subject) => string;
	/** What a place is called. */
	readonly nameOf: (place: WalkPlace) => string;
	/** Whether a place is opened from anywhere and leads back there. */
	readonly isDrawer: (place: WalkPlace) => boolean;
	/** Rows of the table, and the one that a question is about. */
	readonly rows: (subject: Subject) => readonly RoundRow[];
	readonly rowOf: (subject: Subject, prompt: Prompt<Subject>) => string | undefined;
};

/** The state of a round of questions; nothing in it is lost by a kill but `typed`. */
export type RoundState<Subject> = {
	readonly subject: Subject;
	readonly promptId: string;
	readonly typed: string;
	/** Index of the value that the next answer corrects. */
	readonly correcting?: number;
	/** A question back: what was meant. */
	readonly asked?: {readonly question: string; readonly choices: readonly AskedChoice<Subject>[]};
	/** A typed text that was doubted; Enter on the same text again takes it all the same. */
	readonly doubted?: string;
	readonly notes: readonly Note[];
	readonly isHelpShown: boolean;
	/** The table stands in the place of the question, with its cursor on a row. */
	readonly table?: {readonly row: string | undefined};
	/** The floor plan stands in the place of the question until a key types or moves. */
	readonly isPlanShown: boolean;
	/** A name is being typed to jump to; `at` is the place in the list of what fits. */
	readonly jump?: {readonly text: string; readonly at: number};
	/** On prompts for text: the next letter is a command. */
	readonly isArmed: boolean;
	/** Where the latest answer went, for "again". */
	readonly latest?: string;
	/** Prompt that an open drawer leads back to. */
	readonly cameFrom?: string;
	/** What the screen is to do for the latest answer. */
	readonly wish?: 'signals' | 'tones';
	readonly past: ReadonlyArray<{readonly subject: Subject; readonly promptId: string}>;
};

const mostUndone = 200;

/** The prompt that the state stands at; the nearest left where an answer made it disappear. */
export function currentPrompt<Subject>(round: Round<Subject>, state: RoundState<Subject>): Prompt<Subject> {
	const prompts = round.prompts(state.subject);
	return prompts.find(({id}) => id === state.promptId) ?? prompts[0]!;
}

/** The state with one note, in place of what was said before. */
export function withNote<Subject>(
	state: RoundState<Subject>,
	kind: Note['kind'],
	text: string,
): RoundState<Subject> {
	return {...state, notes: [{kind, text}], isArmed: false};
}

/** The state without anything half done. */
export function calm<Subject>(state: RoundState<Subject>): RoundState<Subject> {
	return {
		...state,
		typed: '',
		correcting: undefined,
		asked: undefined,
		doubted: undefined,
		notes: [],
		isArmed: false,
		isHelpShown: false,
		isPlanShown: false,
		table: undefined,
		jump: undefined,
		wish: undefined,
	};
}

/** What undo goes back through, with the state as it is. */
export function remember<Subject>(state: RoundState<Subject>, promptId: string): RoundState<Subject>['past'] {
	return [...state.past, {subject: state.subject, promptId}].slice(-mostUndone);
}
