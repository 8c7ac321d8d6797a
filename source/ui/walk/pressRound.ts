import {commandOf} from '../keys/binding.ts';
import type {Press} from '../keys/press.ts';
import {modeOf, type WalkCommand, walkKeymap} from './keymap.ts';
import {currentPrompt, type Round, type RoundState, reduceRound} from './state.ts';

export type Pressed<Subject> = {readonly state: RoundState<Subject>; readonly isLeaving: boolean};

/**
One key in a round of questions.

Characters that arrive together are text and never commands, except where they are one letter many times, as from a
held key; so a paste into a question for figures cannot leave or undo anything.
*/
export function pressRound<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	press: Press,
	takenAt: string,
): Pressed<Subject> {
	const stay = (next: RoundState<Subject>) => ({state: next, isLeaving: false});
	if (press.key === 'characters') {
		const isHeld = /^(.)\1*$/u.test(press.text) && !/\d/.test(press.text);
		if (!isHeld) return stay(type(round, state, press.text));
		let held: Pressed<Subject> = stay(state);
		for (const text of press.text) {
			if (!held.isLeaving) held = pressRound(round, held.state, {key: 'character', text}, takenAt);
		}

		return held;
	}

	const mode = modeOf(currentPrompt(round, state), state);
	const command = commandOf(walkKeymap, mode, press);
	if (command === 'leave') return {state, isLeaving: true};
	if (command) return stay(obey(round, state, command, takenAt));
	if (press.key !== 'character' || mode === 'page' || mode === 'table') return stay(state);
	if (mode === 'armed') {
		const note = {kind: 'note', text: `“${press.text}” is no command here.`} as const;
		return stay(reduceRound(round, {...state, isArmed: false, notes: []}, {kind: 'say', note}));
	}

	return stay(type(round, state, press.text));
}

function type<Subject>(round: Round<Subject>, state: RoundState<Subject>, text: string): RoundState<Subject> {
	if (state.jump) return reduceRound(round, state, {kind: 'jumpType', text});
	// Digits for a question that the table hides would be taken unseen.
	if (state.table || currentPrompt(round, state).kind === 'page') return state;
	return reduceRound(round, state, {kind: 'type', text});
}

function obey<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	command: Exclude<WalkCommand, 'leave'>,
	takenAt: string,
): RoundState<Subject> {
	switch (command) {
		case 'take':
			return reduceRound(round, state, {kind: 'take', takenAt});
		case 'leaveTyped': {
			const text = `Enter takes ${state.typed}, Esc drops it; then q leaves.`;
			return reduceRound(round, {...state, notes: []}, {kind: 'say', note: {kind: 'note', text}});
		}

		case 'rowUp':
			return reduceRound(round, state, {kind: 'row', by: -1});
		case 'rowDown':
			return reduceRound(round, state, {kind: 'row', by: 1});
		case 'jumpUp':
			return reduceRound(round, state, {kind: 'jumpMove', by: -1});
		case 'jumpDown':
			return reduceRound(round, state, {kind: 'jumpMove', by: 1});
		case 'jumpLeave':
			return reduceRound(round, state, {kind: 'eraseAll'});
		case 'kit':
		case 'wiring':
			return reduceRound(round, state, {kind: 'drawer', drawer: command});
		default:
			return reduceRound(round, state, {kind: command});
	}
}
