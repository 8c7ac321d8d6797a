import type {Prompt} from './prompt/prompt.ts';
import {calm, type Round, type RoundState, say} from './roundState.ts';

/**
To the prompt after `prompt`: required ones first, what is optional within its own stop, then what was put off. Where
nothing needed is open, a question that had its answer before leads to the next of its stop: who takes a second round of
readings goes through them one by one.

@param isCorrection - An earlier answer was mended; that leads on to what it changes.
*/
export function goOn<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	prompt: Prompt<Subject>,
	isCorrection = false,
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
	const next = prompts[at + 1];
	const isRepeat = prompt.isAnswered && !isCorrection && next?.stop === prompt.stop && next.kind !== 'page';
	const putOff = turned.find(isOpen);
	const neededPutOff = turned.find(candidate => isOpen(candidate) && candidate.isRequired);
	const page = prompts.slice(at + 1).find(({kind}) => kind === 'page');
	const ownPage = prompts.find(({kind, stop}) => kind === 'page' && stop === prompt.stop);
	let target: Prompt<Subject> | undefined;
	if (prompt.kind === 'page') target = required ?? page ?? neededPutOff ?? optional ?? putOff;
	else if (!prompt.isRequired) target = follows ?? ownPage ?? required ?? optional ?? putOff ?? page;
	else if (!required && isRepeat) target = next;
	else target = required ?? prompts.find(({id}) => id === round.whenComplete) ?? page ?? optional;
	return {...state, promptId: target?.id ?? prompt.id};
}

/** The first question that is needed and open; where none is, what follows the last of them. */
export function firstOpen<Subject>(round: Round<Subject>, subject: Subject): string {
	const prompts = round.prompts(subject);
	const open = prompts.filter(({isAnswered, kind}) => !isAnswered && kind !== 'page');
	const complete = prompts.find(({id}) => id === round.whenComplete);
	return (open.find(({isRequired}) => isRequired) ?? complete ?? open[0] ?? prompts[0]!).id;
}

/** One question up or down, whether it is answered or not. */
export function step<Subject>(
	round: Round<Subject>,
	state: RoundState<Subject>,
	by: -1 | 1,
): RoundState<Subject> {
	const prompts = round.prompts(state.subject);
	const at = prompts.findIndex(({id}) => id === state.promptId);
	const target = prompts[at + by];
	if (!target) return say(state, 'note', by < 0 ? 'This is the first question.' : 'This is the last one.');
	return {...calm(state), promptId: target.id};
}

/** To the stop before or after, at its first open question. */
export function stepStop<Subject>(
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

/** Puts the question off until the rest is answered. */
export function skip<Subject>(
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
