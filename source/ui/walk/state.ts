import {longestTyped} from '../keys/press.ts';
import type {AskedChoice, Prompt} from './prompt/prompt.ts';

export type Note = {readonly kind: 'said' | 'doubt' | 'no' | 'note'; readonly text: string};

/** What a round of questions is about, as functions of its subject. */
export type Round<Subject> = {
	readonly prompts: (subject: Subject) => readonly Prompt<Subject>[];
	/** Ids of prompts that the user put off. */
	readonly skipped: (subject: Subject) => readonly string[];
	readonly withSkipped: (subject: Subject, ids: readonly string[]) => Subject;
	/** Prompt to go to when every required one is answered. */
	readonly whenComplete: string | undefined;
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
	readonly isTableShown: boolean;
	/** The floor plan stands in the place of the question until a key types or moves. */
	readonly isPlanShown: boolean;
	/** On prompts for text: the next letter is a command. */
	readonly isArmed: boolean;
	/** Where the latest answer went, for "again". */
	readonly latest?: string;
	readonly past: ReadonlyArray<{readonly subject: Subject; readonly promptId: string}>;
};

export type RoundAction =
	| {readonly kind: 'type'; readonly text: string}
	| {readonly kind: 'erase'}
	| {readonly kind: 'eraseAll'}
	| {readonly kind: 'take'; readonly takenAt: string}
	| {readonly kind: 'previous'}
	| {readonly kind: 'next'}
	| {readonly kind: 'previousStop'}
	| {readonly kind: 'nextStop'}
	| {readonly kind: 'skip'}
	| {readonly kind: 'again'}
	| {readonly kind: 'correct'}
	| {readonly kind: 'setAside'}
	| {readonly kind: 'undo'}
	| {readonly kind: 'help'}
	| {readonly kind: 'table'}
	| {readonly kind: 'plan'}
	| {readonly kind: 'arm'}
	| {readonly kind: 'go'; readonly promptId: string}
	| {readonly kind: 'change'; readonly subject: unknown}
	| {readonly kind: 'say'; readonly note: Note};

const mostUndone = 200;

/** A round that starts, or goes on, at a prompt; at the first open one where that is gone. */
export function startRound<Subject>(
	round: Round<Subject>,
	subject: Subject,
	promptId: string | undefined,
): RoundState<Subject> {
	const prompts = round.prompts(subject);
	const there = prompts.find(({id}) => id === promptId);
	return {
		subject,
		promptId: there?.id ?? firstOpen(round, subject),
		typed: '',
		notes: [],
		isHelpShown: false,
		isTableShown: false,
		isPlanShown: false,
		isArmed: false,
		past: [],
	};
}

/** The prompt that the state stands at; the nearest left where an answer made it disappear. */
export function currentPrompt<Subject>(round: Round<Subject>, state: RoundState<Subject>): Prompt<Subject> {
	const prompts = round.prompts(state.subject);
	return prompts.find(({id}) => id === state.promptId) ?? prompts[0]!;
}

/** One step of a round of questions. Pure: the caller saves when `subject` is another one. */
export function reduceRound<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	action: RoundAction,
): RoundState<Subject> {
	const prompt = currentPrompt(round, state);
	switch (action.kind) {
		case 'type': {
			// What was refused or doubted is typed anew; the erase key edits it instead.
			const isStale = state.doubted !== undefined || state.notes.some(({kind}) => kind === 'no');
			const typed = [...((isStale ? '' : state.typed) + action.text)].slice(0, longestTyped).join('');
			return {
				...state,
				typed,
				notes: [],
				doubted: undefined,
				isArmed: false,
				isHelpShown: false,
				isPlanShown: false,
			};
		}

		case 'erase':
			return {...state, typed: [...state.typed].slice(0, -1).join(''), notes: [], doubted: undefined};
		case 'eraseAll':
			return {...calm(state), promptId: state.promptId, latest: state.latest};
		case 'take':
			return take(round, state, prompt, action.takenAt);
		case 'previous':
			return step(round, state, -1);
		case 'next':
			return step(round, state, 1);
		case 'previousStop':
			return stepStop(round, state, prompt, -1);
		case 'nextStop':
			return stepStop(round, state, prompt, 1);
		case 'skip':
			return skip(round, state, prompt);
		case 'again':
			if (!state.latest) return say(state, 'note', 'Nothing was taken yet in this sitting.');
			return {...calm(state), promptId: state.latest};
		case 'correct':
			return correct(state, prompt);
		case 'setAside':
			return setAside(round, state, prompt);
		case 'undo':
			return undo(round, state);
		case 'help':
			return {...state, isHelpShown: !state.isHelpShown, isArmed: false};
		case 'table':
			return {...state, isTableShown: !state.isTableShown, isPlanShown: false, isArmed: false};
		case 'plan':
			return {...state, isPlanShown: !state.isPlanShown, isTableShown: false, isArmed: false};
		case 'arm':
			return {...state, isArmed: !state.isArmed, asked: undefined, correcting: undefined};
		case 'go':
			return {...calm(state), promptId: action.promptId};
		case 'change':
			return {
				...state,
				subject: action.subject as Subject,
				past: remember(state, state.promptId),
				notes: [],
			};
		case 'say':
			return {...state, notes: [...state.notes, action.note]};
	}
}

function say<Subject>(state: RoundState<Subject>, kind: Note['kind'], text: string): RoundState<Subject> {
	return {...state, notes: [{kind, text}], isArmed: false};
}

/** The state without anything half done. */
function calm<Subject>(state: RoundState<Subject>): RoundState<Subject> {
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
	};
}

function remember<Subject>(state: RoundState<Subject>, promptId: string): RoundState<Subject>['past'] {
	return [...state.past, {subject: state.subject, promptId}].slice(-mostUndone);
}

function take<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	takenAt: string,
): RoundState<Subject> {
	const typed = state.typed.trim();
	if (state.asked) return answer(round, state, prompt, typed);
	if (typed === '') return takeNothing(round, state, prompt, takenAt);
	const taken = prompt.take(state.subject, typed, {takenAt, correcting: state.correcting});
	if (taken.kind === 'no') return say(state, 'no', taken.why);
	if (taken.kind === 'ask') {
		return {...state, typed: '', asked: {question: taken.question, choices: taken.choices}, notes: []};
	}

	if (taken.doubt && state.doubted !== typed) {
		return {
			...state,
			doubted: typed,
			notes: [{kind: 'doubt', text: `${taken.doubt} Enter again takes it all the same.`}],
		};
	}

	const after = accept(round, state, prompt, taken.next, taken.readAs);
	return taken.hint ? {...after, notes: [...after.notes, {kind: 'note', text: taken.hint}]} : after;
}

function takeNothing<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	takenAt: string,
): RoundState<Subject> {
	if (state.correcting !== undefined)
		return say({...state, correcting: undefined}, 'note', 'Left as it was.');
	if (prompt.kind === 'choice' && prompt.usual !== undefined && !prompt.isAnswered) {
		const taken = prompt.take(state.subject, String(prompt.usual + 1), {takenAt});
		if (taken.kind === 'taken') return accept(round, state, prompt, taken.next, taken.readAs);
	}

	if (prompt.isAnswered || prompt.kind === 'page') return goOn(round, calm(state), prompt);
	if (!prompt.isRequired) return skip(round, state, prompt);
	return say(state, 'no', 'This one is needed. Type it, or s asks it later.');
}

function answer<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	typed: string,
): RoundState<Subject> {
	const choices = state.asked!.choices;
	const only = choices.length === 1 && typed === '' ? choices[0] : undefined;
	const chosen = only ?? (/^\d+$/.test(typed) ? choices[Number(typed) - 1] : undefined);
	if (chosen) return accept(round, state, prompt, chosen.next, chosen.label);
	return say(
		{...state, typed: ''},
		'no',
		`Type ${choices.map((_, index) => index + 1).join(' or ')}, then Enter. Esc drops the value.`,
	);
}

function accept<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	next: Subject,
	readAs: string,
): RoundState<Subject> {
	const subject = round.withSkipped(
		next,
		round.skipped(next).filter(id => id !== prompt.id),
	);
	const after = {...calm(state), subject, past: remember(state, prompt.id), latest: prompt.id};
	return say(goOn(round, after, prompt), 'said', `${prompt.question}: ${readAs}`);
}

/** To the prompt after `prompt`: required ones first, what is optional within its own stop, then what was put off. */
function goOn<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
): RoundState<Subject> {
	const prompts = round.prompts(state.subject);
	const at = prompts.findIndex(({id}) => id === prompt.id);
	const turned = [...prompts.slice(at + 1), ...prompts.slice(0, Math.max(at, 0))];
	const skipped = round.skipped(state.subject);
	const isOpen = (candidate: Prompt<Subject>) => !candidate.isAnswered && candidate.kind !== 'page';
	const required = turned.find(
		candidate => isOpen(candidate) && candidate.isRequired && !skipped.includes(candidate.id),
	);
	const optional = turned.find(candidate => isOpen(candidate) && !skipped.includes(candidate.id));
	const follows = turned.find(
		candidate => isOpen(candidate) && candidate.stop === prompt.stop && !skipped.includes(candidate.id),
	);
	const putOff = turned.find(isOpen);
	const neededPutOff = turned.find(candidate => isOpen(candidate) && candidate.isRequired);
	const page = prompts.slice(at + 1).find(({kind}) => kind === 'page');
	const ownPage = prompts.find(({kind, stop}) => kind === 'page' && stop === prompt.stop);
	let target: Prompt<Subject> | undefined;
	if (prompt.kind === 'page') target = required ?? page ?? neededPutOff ?? optional ?? putOff;
	else if (!prompt.isRequired) target = follows ?? ownPage ?? required ?? optional ?? putOff ?? page;
	else target = required ?? prompts.find(({id}) => id === round.whenComplete) ?? page ?? optional;
	return {...state, promptId: target?.id ?? prompt.id};
}

/** The first question that is needed and open; where none is, what follows the last of them. */
function firstOpen<Subject>(round: Round<Subject>, subject: Subject): string {
	const prompts = round.prompts(subject);
	const open = prompts.filter(({isAnswered, kind}) => !isAnswered && kind !== 'page');
	const complete = prompts.find(({id}) => id === round.whenComplete);
	return (open.find(({isRequired}) => isRequired) ?? complete ?? open[0] ?? prompts[0]!).id;
}

function step<Subject>(round: Round<Subject>, state: RoundState<Subject>, by: -1 | 1): RoundState<Subject> {
	const prompts = round.prompts(state.subject);
	const at = prompts.findIndex(({id}) => id === state.promptId);
	const target = prompts[at + by];
	if (!target) return say(state, 'note', by < 0 ? 'This is the first question.' : 'This is the last one.');
	return {...calm(state), promptId: target.id};
}

function stepStop<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	by: -1 | 1,
): RoundState<Subject> {
	const prompts = round.prompts(state.subject);
	const stops = [...new Set(prompts.map(({stop}) => stop))];
	const stop = stops[stops.indexOf(prompt.stop) + by];
	const inStop = prompts.filter(candidate => candidate.stop === stop);
	// A page of its own tells what the stop is about and where it goes on.
	const page = inStop.find(({kind}) => kind === 'page');
	const target = page ?? inStop.find(({isAnswered}) => !isAnswered) ?? inStop[0];
	return target ? {...calm(state), promptId: target.id} : state;
}

function skip<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
): RoundState<Subject> {
	if (prompt.isAnswered || prompt.kind === 'page') return goOn(round, calm(state), prompt);
	const skipped = [...new Set([...round.skipped(state.subject), prompt.id])];
	const subject = round.withSkipped(state.subject, skipped);
	return say(
		goOn(round, {...calm(state), subject}, prompt),
		'note',
		`${prompt.question}: asked again later.`,
	);
}

function correct<Subject>(state: RoundState<Subject>, prompt: Prompt<Subject>): RoundState<Subject> {
	if (prompt.values.length === 0)
		return say(state, 'note', 'There is no value here yet that could be corrected.');
	const last = prompt.values.length - 1;
	const correcting =
		state.correcting === undefined ? last : (state.correcting + prompt.values.length - 1) % (last + 1);
	const more = last > 0 ? ' e again picks the one before.' : '';
	return say(
		{...state, correcting},
		'note',
		`The next value replaces ${prompt.values[correcting]}.${more} Enter alone leaves it.`,
	);
}

function setAside<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
): RoundState<Subject> {
	if (!prompt.setAside || prompt.values.length === 0)
		return say(state, 'note', 'There is no reading here that could be set aside.');
	const index = state.correcting ?? prompt.values.length - 1;
	const subject = prompt.setAside(state.subject, index);
	const after = {...calm(state), subject, past: remember(state, prompt.id)};
	const now = currentPrompt(round, after).values[index];
	return say(after, 'note', `Now ${now}. What is set aside stays in the file, without a say; u undoes this.`);
}

function undo<Subject>(round: Round<Subject>, state: RoundState<Subject>): RoundState<Subject> {
	if (state.typed !== '' || state.asked || state.correcting !== undefined) return calm(state);
	const before = state.past.at(-1);
	if (!before) return say(state, 'note', 'There is nothing to undo in this sitting. e corrects a value.');
	const after = {
		...calm(state),
		subject: before.subject,
		promptId: before.promptId,
		past: state.past.slice(0, -1),
	};
	return say(after, 'note', `Undone. ${currentPrompt(round, after).question}: as before.`);
}
