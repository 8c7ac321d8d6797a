import {leadOf} from './prompt/leadOf.ts';
import type {Prompt} from './prompt/prompt.ts';
import {calm, currentPrompt, type Round, type RoundState, remember, withNote} from './roundState.ts';

/** The next answer replaces a value: the last that counts, and asked for again the one before. */
export function correct<Subject>(state: RoundState<Subject>, prompt: Prompt<Subject>): RoundState<Subject> {
	const count = prompt.values.length;
	if (count === 0) return withNote(state, 'note', 'There is no value here yet that could be corrected.');
	const correcting =
		state.correcting === undefined ? (prompt.replaces ?? count - 1) : (state.correcting + count - 1) % count;
	const more = count > 1 ? ' e again picks the one before.' : '';
	return withNote(
		{...state, correcting},
		'note',
		`The next value replaces ${prompt.values[correcting]}.${more} Enter alone leaves it.`,
	);
}

/** Sets a reading aside, or takes it back in. */
export function setAside<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
): RoundState<Subject> {
	if (!prompt.setAside || prompt.values.length === 0)
		return withNote(state, 'note', 'There is no reading here that could be set aside.');
	const index = state.correcting ?? prompt.replaces ?? prompt.values.length - 1;
	const subject = prompt.setAside(state.subject, index);
	const after = {...calm(state), subject, past: remember(state, prompt.id)};
	const now = currentPrompt(round, after).values[index];
	return withNote(
		after,
		'note',
		`Now ${now}. What is set aside stays in the file, without a say; u undoes this.`,
	);
}

/** Clears what is half done, else takes the last answer back. */
export function undo<Subject>(round: Round<Subject>, state: RoundState<Subject>): RoundState<Subject> {
	if (state.typed !== '' || state.asked || state.correcting !== undefined) return calm(state);
	const before = state.past.at(-1);
	if (!before)
		return withNote(state, 'note', 'There is nothing to undo in this sitting. e corrects a value.');
	const after = {
		...calm(state),
		subject: before.subject,
		promptId: before.promptId,
		past: state.past.slice(0, -1),
	};
	return withNote(after, 'note', `Undone. ${leadOf(currentPrompt(round, after).question)} as before.`);
}
