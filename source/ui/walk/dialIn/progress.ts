import type {Profile} from '../../../profile/types.ts';
import type {Progress} from '../progress.ts';
import {situationOf} from './situation.ts';

/** Settings that stand in the boxes, of all in the set that was decided. */
export function dialledIn(profile: Profile): Progress {
	const situation = situationOf(profile);
	if (situation.kind !== 'decided') return {state: 'page', answered: 0, required: 0};
	const answered = situation.items.filter(({isDone}) => isDone).length;
	const required = situation.items.length;
	return {state: answered < required ? 'open' : 'done', answered, required};
}
