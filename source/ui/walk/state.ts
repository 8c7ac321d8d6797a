import {longestTyped} from '../keys/press.ts';
import {correct, setAside, undo} from './editing.ts';
import {firstOpen, skip, step, stepStop} from './moving.ts';
import {calm, currentPrompt, type Note, type Round, type RoundState, remember, say} from './roundState.ts';
import {take} from './taking.ts';

export {currentPrompt, type Note, type Round, type RoundState} from './roundState.ts';

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
