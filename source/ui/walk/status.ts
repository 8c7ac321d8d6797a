import type {Profile} from '../../profile/types.ts';
import {situationOf} from './dialIn/situation.ts';
import {promptsFor, stops} from './stops.ts';

/** How far a stop is: `done`, `open` with what is still needed, `later` where only optional questions are left. */
export type StopStatus = {
	readonly id: string;
	readonly name: string;
	readonly state: 'done' | 'open' | 'later' | 'page';
	/** What is needed and there, of all that is needed. */
	readonly answered: number;
	readonly required: number;
};

let latest: {readonly profile: Profile; readonly status: readonly StopStatus[]} | undefined;

/** Every stop with what it still needs. */
export function statusOf(profile: Profile): readonly StopStatus[] {
	if (latest?.profile !== profile)
		latest = {profile, status: stops.map(({id, name}) => ({id, name, ...progress(profile, id)}))};
	return latest.status;
}

function progress(profile: Profile, stop: string): Omit<StopStatus, 'id' | 'name'> {
	const own = promptsFor(profile).filter(prompt => prompt.stop === stop);
	if (stop === 'dialIn') return dialledIn(profile);
	if (own.every(({kind}) => kind === 'page')) return {state: 'page', answered: 0, required: 0};
	const needed = own.filter(({isRequired}) => isRequired);
	const required = needed.length;
	const answered = needed.filter(({isAnswered}) => isAnswered).length;
	if (answered < required) return {state: 'open', answered, required};
	const isDone = required > 0 || own.every(({isAnswered}) => isAnswered);
	return {state: isDone ? 'done' : 'later', answered, required};
}

/** Settings that stand in the boxes, of all in the set that was decided. */
function dialledIn(profile: Profile): Omit<StopStatus, 'id' | 'name'> {
	const situation = situationOf(profile);
	if (situation.kind !== 'decided') return {state: 'page', answered: 0, required: 0};
	const answered = situation.items.filter(({isDone}) => isDone).length;
	const required = situation.items.length;
	return {state: answered < required ? 'open' : 'done', answered, required};
}
