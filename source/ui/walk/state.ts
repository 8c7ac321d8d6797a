import {longestTyped} from '../keys/press.ts';
import {correct, setAside, undo} from './editing.ts';
import {type JumpAction, jumpBy} from './jumping.ts';
import {closeDrawer, firstOpen, skip, step, stepStop, toggleDrawer} from './moving.ts';
import type {DrawerId} from './places.ts';
import {
	calm,
	currentPrompt,
	type Note,
	type Round,
	type RoundState,
	remember,
	withNote,
} from './roundState.ts';
import {goToRow, moveRow, toggleTable} from './tableCursor.ts';
import {take} from './taking.ts';

export {currentPrompt, type Note, type Round, type RoundState} from './roundState.ts';

export type RoundAction =
	| {readonly kind: 'type'; readonly text: string}
	| {readonly kind: 'erase'}
	| {readonly kind: 'eraseAll'}
	| {readonly kind: 'back'}
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
	| {readonly kind: 'drawer'; readonly drawer: DrawerId}
	| {readonly kind: 'row'; readonly by: -1 | 1}
	| {readonly kind: 'goToRow'}
	| JumpAction
	/** To a prompt; where `isCorrecting`, the next value there replaces the last. */
	| {readonly kind: 'go'; readonly promptId: string; readonly isCorrecting?: boolean}
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
		case 'back': {
			const isBegun = state.correcting !== undefined || state.isHelpShown || state.isPlanShown;
			if (!isBegun && round.isDrawer(prompt.stop)) return closeDrawer(round, state);
			return {...calm(state), promptId: state.promptId, latest: state.latest};
		}

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
			if (!state.latest) return withNote(state, 'note', 'Nothing was taken yet in this sitting.');
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
			return toggleTable(round, state, prompt);
		case 'row':
			return moveRow(round, state, action.by);
		case 'goToRow':
			return goToRow(round, state, prompt);
		case 'drawer':
			return toggleDrawer(round, state, prompt, action.drawer);
		case 'plan':
			return {...state, isPlanShown: !state.isPlanShown, table: undefined, isArmed: false};
		case 'arm':
			return {...state, isArmed: !state.isArmed, asked: undefined, correcting: undefined};
		case 'go': {
			const there = {...calm(state), promptId: action.promptId};
			return action.isCorrecting ? correct(there, currentPrompt(round, there)) : there;
		}

		case 'jump':
		case 'jumpType':
		case 'jumpErase':
		case 'jumpMove':
		case 'jumpGo':
			return jumpBy(round, state, action);
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
