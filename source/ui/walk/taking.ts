import {goOn, skip} from './moving.ts';
import {leadOf} from './prompt/leadOf.ts';
import type {AskedChoice, Prompt, TakenAnswer} from './prompt/prompt.ts';
import {calm, type Round, type RoundState, remember, withNote} from './roundState.ts';

/** Enter: what was typed is read, refused, doubted, asked about, or taken. */
export function take<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	takenAt: string,
): RoundState<Subject> {
	const typed = state.typed.trim();
	if (state.asked) return answer(round, state, prompt, typed, takenAt);
	if (typed === '') return takeNothing(round, state, prompt, takenAt);
	const taken = prompt.take(state.subject, typed, {takenAt, correcting: state.correcting});
	if (taken.kind === 'no') return withNote(state, 'no', taken.why);
	if (taken.kind === 'ask') {
		return {...state, typed: '', asked: {question: taken.question, choices: taken.choices}, notes: []};
	}

	const asked = taken.doubt === undefined ? undefined : replaceOrKeep(state, prompt, typed, taken, takenAt);
	if (asked) return {...state, typed: '', asked, notes: []};
	const after = weigh(round, state, prompt, typed, {...taken, label: taken.readAs});
	return wished(state, after, taken);
}

/** What the answer asks of the screen, once it is taken. */
function wished<Subject>(
	before: RoundState<Subject>,
	after: RoundState<Subject>,
	{wish}: Extract<TakenAnswer<Subject>, {kind: 'taken'}>,
): RoundState<Subject> {
	return wish && after.subject !== before.subject ? {...after, wish} : after;
}

/** Where a value stands already, a doubtful one is asked about: does it replace that one, or count beside it? */
function replaceOrKeep<Subject>(
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	typed: string,
	{next, readAs, doubt, hint}: Extract<TakenAnswer<Subject>, {kind: 'taken'}>,
	takenAt: string,
): RoundState<Subject>['asked'] {
	const {replaces, values} = prompt;
	if (replaces === undefined || state.correcting !== undefined) return undefined;
	const replaced = prompt.take(state.subject, typed, {takenAt, correcting: replaces});
	if (replaced.kind === 'no') return undefined;
	const replacing =
		replaced.kind === 'ask'
			? replaced.choices
			: [{label: `Replace ${values[replaces]}`, next: replaced.next, hint: replaced.hint, said: readAs}];
	return {
		question: doubt!,
		choices: [
			...replacing,
			{label: `Keep both, ${values[replaces]} and ${readAs}`, next, hint, said: readAs},
		],
	};
}

/** Takes a value, but for one that strikes: that is asked about once. */
function weigh<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	typed: string,
	{next, label, said, doubt, hint}: AskedChoice<Subject>,
): RoundState<Subject> {
	if (doubt && state.doubted !== typed) {
		return {
			...state,
			doubted: typed,
			notes: [{kind: 'doubt', text: `${doubt} Enter again takes it all the same.`}],
		};
	}

	const after = accept(round, state, prompt, next, said ?? label);
	return hint ? {...after, notes: [...after.notes, {kind: 'note', text: hint}]} : after;
}

function takeNothing<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	takenAt: string,
): RoundState<Subject> {
	if (state.correcting !== undefined)
		return withNote({...state, correcting: undefined}, 'note', 'Left as it was.');
	const usual = prompt.usual === undefined ? prompt.usualText : String(prompt.usual + 1);
	if (usual !== undefined && !prompt.isAnswered) {
		const taken = prompt.take(state.subject, usual, {takenAt});
		if (taken.kind === 'taken')
			return wished(state, accept(round, state, prompt, taken.next, taken.readAs), taken);
	}

	if (prompt.isAnswered || prompt.kind === 'page') return goOn(round, calm(state), prompt);
	if (!prompt.isRequired) return skip(round, state, prompt);
	return withNote(state, 'no', 'This one is needed. Type it, or s asks it later.');
}

function answer<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	typed: string,
	takenAt: string,
): RoundState<Subject> {
	const choices = state.asked!.choices;
	const only = choices.length === 1 && typed === '' ? choices[0] : undefined;
	const chosen = only ?? (/^\d+$/.test(typed) ? choices[Number(typed) - 1] : undefined);
	if (chosen) return weigh(round, state, prompt, typed, chosen);
	// Who types the value anew has answered, too.
	if (typed !== '')
		return take(round, {...state, asked: undefined, doubted: undefined, notes: []}, prompt, takenAt);
	return withNote(
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
	return withNote(
		goOn(round, after, prompt, state.correcting !== undefined),
		'said',
		`${leadOf(prompt.question)} ${readAs}`,
	);
}
