import {leadOf} from './prompt/leadOf.ts';
import type {Prompt} from './prompt/prompt.ts';
import {calm, type Round, type RoundState, withNote} from './roundState.ts';

/** Whether a question comes by itself: it is needed, or offered and not yet passed. */
function comes<Subject>(prompt: Prompt<Subject>, skipped: readonly string[]): boolean {
	return prompt.isRequired || (prompt.isOffered === true && !skipped.includes(prompt.id));
}

/**
To the question after `prompt`, in the same place for as long as something is open there: after a needed one first the
needed, then the offered ones, those below first; after an optional one whatever is open below. Only then to what follows the place.
An answer that was there before leads to the next question of its place, so that a second round of readings goes
one by one.

@param isCorrection - An earlier answer was mended; that leads on to what it changes.
*/
export function goOn<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	isCorrection = false,
): RoundState<Subject> {
	const prompts = round.prompts(state.subject);
	const skipped = round.skipped(state.subject);
	const to = (id: string | undefined) => ({...state, promptId: id ?? prompt.id});
	if (prompt.kind === 'page') {
		const needed = prompts.find(one => isOpen(one) && one.isRequired && !skipped.includes(one.id));
		return needed ? to(needed.id) : leavePlace(round, state, prompt);
	}

	const own = prompts.filter(({stop}) => stop === prompt.stop);
	const at = own.findIndex(({id}) => id === prompt.id);
	const below = own.slice(at + 1);
	const above = own.slice(0, Math.max(0, at));
	const turned = [...below, ...above];
	const needed = turned.find(one => isOpen(one) && one.isRequired);
	const offered = turned.find(one => isOpen(one) && comes(one, skipped));
	const isAhead = prompt.isRequired || prompt.isOffered;
	const next = (isAhead ? undefined : below.find(isOpen)) ?? needed ?? offered;
	if (next) return to(next.id);
	const follows = below[0];
	if (prompt.isAnswered && !isCorrection && follows && follows.kind !== 'page') return to(follows.id);
	const page = own.find(({kind}) => kind === 'page');
	return page ? to(page.id) : leavePlace(round, state, prompt);
}

function isOpen<Subject>({isAnswered, kind}: Prompt<Subject>): boolean {
	return !isAnswered && kind !== 'page';
}

/** To what follows a place: a drawer leads back to where it was opened. */
function leavePlace<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	{id, stop}: Prompt<Subject>,
): RoundState<Subject> {
	if (round.isDrawer(stop)) return closeDrawer(round, state);
	return {...state, promptId: round.after(state.subject, stop) ?? id};
}

/** Back to where a drawer was opened from. */
export function closeDrawer<Subject>(round: Round<Subject>, state: RoundState<Subject>): RoundState<Subject> {
	const back = round.prompts(state.subject).find(({id}) => id === state.cameFrom);
	return {
		...calm(state),
		cameFrom: undefined,
		promptId: back?.id ?? firstOpen(round, state.subject),
	};
}

/** Opens a drawer at its page or its first open question; where it is open already, back to where one came from. */
export function toggleDrawer<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	drawer: Prompt<Subject>['stop'],
): RoundState<Subject> {
	if (prompt.stop === drawer) return closeDrawer(round, state);
	const own = round.prompts(state.subject).filter(({stop}) => stop === drawer);
	const target = entryOf(own, round.skipped(state.subject));
	if (!target) return state;
	const cameFrom = round.isDrawer(prompt.stop) ? state.cameFrom : prompt.id;
	return {...calm(state), promptId: target.id, cameFrom};
}

/**
Where one enters a place: what is offered before its page, its page, its first needed open question, its first open
one, its first.
*/
export function entryOf<Subject>(
	own: readonly Prompt<Subject>[],
	skipped: readonly string[],
): Prompt<Subject> | undefined {
	const page = own.findIndex(({kind}) => kind === 'page');
	return (
		own.slice(0, page < 0 ? own.length : page).find(one => isOpen(one) && comes(one, skipped)) ??
		own.find(({kind}) => kind === 'page') ??
		own.find(one => isOpen(one) && one.isRequired) ??
		own.find(isOpen) ??
		own[0]
	);
}

/** The first question that is needed and open; where none is, where the round goes on, then whatever is open. */
export function firstOpen<Subject>(round: Round<Subject>, subject: Subject): string {
	const prompts = round.prompts(subject);
	const open = prompts.filter(isOpen);
	const needed = open.find(({isRequired}) => isRequired);
	if (needed) return needed.id;
	const page = prompts.find(({kind}) => kind === 'page');
	return round.rest?.(subject) ?? (page ?? open[0] ?? prompts[0]!).id;
}

/** One question up or down in the same place, whether it is answered or not. */
export function step<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	by: -1 | 1,
): RoundState<Subject> {
	const prompts = round.prompts(state.subject);
	const place = prompts.find(({id}) => id === state.promptId)?.stop ?? prompts[0]!.stop;
	const own = prompts.filter(({stop}) => stop === place);
	const target = own[own.findIndex(({id}) => id === state.promptId) + by];
	if (target) return {...calm(state), promptId: target.id};
	const end = by < 0 ? 'first' : 'last';
	const name = round.nameOf(place);
	const hasOther = placesOf(round, state.subject).indexOf(place) + by in placesOf(round, state.subject);
	const away = round.isDrawer(place)
		? ' Esc leads back.'
		: !hasOther
			? ''
			: by < 0
				? ' [ goes to the stop before.'
				: ' ] goes to the next stop.';
	return withNote(state, 'note', `This is the ${end} of ${name}.${away}`);
}

/** The stops that have questions, in order; drawers are none. */
function placesOf<Subject>(round: Round<Subject>, subject: Subject): Array<Prompt<Subject>['stop']> {
	const prompts = round.prompts(subject).filter(({stop}) => !round.isDrawer(stop));
	return [...new Set(prompts.map(({stop}) => stop))];
}

/** To the stop before or after; a drawer is closed first. */
export function stepStop<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	by: -1 | 1,
): RoundState<Subject> {
	if (round.isDrawer(prompt.stop)) return closeDrawer(round, state);
	const places = placesOf(round, state.subject);
	const place = places[places.indexOf(prompt.stop) + by];
	const own = round.prompts(state.subject).filter(({stop}) => stop === place);
	const target = entryOf(own, round.skipped(state.subject));
	return target ? {...calm(state), promptId: target.id} : state;
}

/** Puts the question off: it is asked again at the end of its stop, and passed over once all that is left was put off. */
export function skip<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
): RoundState<Subject> {
	if (prompt.isAnswered || prompt.kind === 'page') return goOn(round, calm(state), prompt);
	const wasPutOff = round.skipped(state.subject).includes(prompt.id);
	const skipped = [...new Set([...round.skipped(state.subject), prompt.id, ...(prompt.passesAlso ?? [])])];
	const after = {...calm(state), subject: round.withSkipped(state.subject, skipped)};
	if (!prompt.isRequired)
		return withNote(goOn(round, after, prompt), 'note', `${leadOf(prompt.question)} left out.`);
	const own = round.prompts(after.subject).filter(({stop}) => stop === prompt.stop);
	const at = own.findIndex(({id}) => id === prompt.id);
	const left = own.filter(one => isOpen(one) && one.isRequired && !skipped.includes(one.id));
	const below = own
		.slice(at + 1)
		.find(one => left.includes(one) || (wasPutOff && isOpen(one) && one.isRequired));
	const target = below ?? left[0];
	const moved = target ? {...after, promptId: target.id} : leavePlace(round, after, prompt);
	return withNote(
		moved,
		'note',
		moved.promptId === prompt.id
			? 'Nothing else is left to ask here; this answer is needed to go on.'
			: `${leadOf(prompt.question)} put off, asked again at the end of ${round.nameOf(prompt.stop)}.`,
	);
}
