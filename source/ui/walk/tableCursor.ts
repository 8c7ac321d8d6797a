import type {Prompt} from './prompt/prompt.ts';
import {calm, type Round, type RoundState, withNote} from './roundState.ts';

/** Shows the table with the cursor on the row of the present question, or takes it away. */
export function toggleTable<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
): RoundState<Subject> {
	if (state.table) return {...calm(state), table: undefined};
	const rows = round.rows(state.subject);
	const row = round.rowOf(state.subject, prompt) ?? rows[0]?.id;
	return {...state, table: {row}, isPlanShown: false, isArmed: false, isHelpShown: false, notes: []};
}

export function moveRow<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	by: -1 | 1,
): RoundState<Subject> {
	const rows = round.rows(state.subject);
	const at = rows.findIndex(({id}) => id === state.table?.row);
	const next = rows[Math.max(0, Math.min(rows.length - 1, at + by))];
	return {...state, table: {row: next?.id}, notes: []};
}

/** To the question of the row under the cursor: in the present place where it has one, open ones first. */
export function goToRow<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
): RoundState<Subject> {
	const row = state.table?.row;
	const about = round
		.prompts(state.subject)
		.filter(one => one.kind !== 'page' && row !== undefined && round.rowOf(state.subject, one) === row);
	const here = about.filter(({stop}) => stop === prompt.stop);
	const there = here.length > 0 ? here : about;
	const target = there.find(({isAnswered}) => !isAnswered) ?? there[0];
	return target
		? {...calm(state), promptId: target.id}
		: withNote({...state, table: undefined}, 'note', 'No question is about this row.');
}
