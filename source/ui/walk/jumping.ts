import type {Prompt} from './prompt/prompt.ts';
import {calm, type Round, type RoundState, withNote} from './roundState.ts';

/** Most targets that are listed. */
const mostTargets = 8;

/**
Questions whose words begin with what was typed, word by word and in any order; a channel's short name and the name of
its stop count as words. Those of the present place come first. Nothing typed lists the present place.
*/
function fittingPrompts<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
): readonly Prompt<Subject>[] {
	const prompts = round.prompts(state.subject);
	const place = prompts.find(({id}) => id === state.promptId)?.stop;
	const wanted = wordsOf(state.jump?.text ?? '');
	const fits = (prompt: Prompt<Subject>) => {
		const words = wordsOf(`${prompt.question} ${prompt.row ?? ''} ${round.nameOf(prompt.stop)}`);
		return wanted.every(word => words.some(other => other.startsWith(word)));
	};

	const here = prompts.filter(({stop}) => stop === place);
	const elsewhere = wanted.length === 0 ? [] : prompts.filter(({stop}) => stop !== place);
	return [...here, ...elsewhere].filter(fits);
}

/** The first of them, as they are listed; and how many more fit what was typed. */
export function jumpTargets<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
): {readonly listed: readonly Prompt<Subject>[]; readonly more: number} {
	const fitting = fittingPrompts(round, state);
	return {listed: fitting.slice(0, mostTargets), more: Math.max(0, fitting.length - mostTargets)};
}

function wordsOf(text: string): string[] {
	return text
		.toLowerCase()
		.split(/[^\p{L}\p{N}]+/u)
		.filter(Boolean);
}

export type JumpAction =
	| {readonly kind: 'jump'}
	| {readonly kind: 'jumpType'; readonly text: string}
	| {readonly kind: 'jumpErase'}
	| {readonly kind: 'jumpMove'; readonly by: -1 | 1}
	| {readonly kind: 'jumpGo'};

/** One step of typing a name and going there. */
export function jumpBy<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	action: JumpAction,
): RoundState<Subject> {
	const {text, at} = state.jump ?? {text: '', at: 0};
	switch (action.kind) {
		case 'jump':
			return {...calm(state), jump: {text: '', at: 0}};
		case 'jumpType':
			return {...state, jump: {text: (text + action.text).slice(0, 60), at: 0}};
		case 'jumpErase':
			return {...state, jump: {text: [...text].slice(0, -1).join(''), at: 0}};
		case 'jumpMove': {
			const last = jumpTargets(round, state).listed.length - 1;
			return {...state, jump: {text, at: Math.max(0, Math.min(last, at + action.by))}};
		}

		case 'jumpGo': {
			const target = jumpTargets(round, state).listed[at];
			if (!target) return withNote(calm(state), 'note', `Nothing here is called “${text}”.`);
			return {...calm(state), promptId: target.id};
		}
	}
}
