import type {Profile} from '../../profile/types.ts';
import type {StopId} from './places.ts';
import type {Prompt} from './prompt/prompt.ts';

/**
How far a stop is: `done`, `open` with what is still needed, `later` where only optional questions are left, `missed` where
the second round says no.
*/
export type Progress = {
	readonly state: 'done' | 'open' | 'later' | 'page' | 'missed';
	/** What is needed and there, of all that is needed. */
	readonly answered: number;
	readonly required: number;
};

/** How far one stop of the walk is. */
export type StopStatus = Progress & {readonly id: StopId; readonly name: string};

/** How far a stop is by its questions. */
export function progressOf(prompts: readonly Prompt<Profile>[]): Progress {
	if (prompts.every(({kind}) => kind === 'page')) return {state: 'page', answered: 0, required: 0};
	const needed = prompts.filter(({isRequired}) => isRequired);
	const required = needed.length;
	const answered = needed.filter(({isAnswered}) => isAnswered).length;
	if (answered < required) return {state: 'open', answered, required};
	const isDone = required > 0 || prompts.every(({isAnswered}) => isAnswered);
	return {state: isDone ? 'done' : 'later', answered, required};
}
