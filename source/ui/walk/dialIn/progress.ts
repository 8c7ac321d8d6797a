import type {Profile} from '../../../profile/types.ts';
import type {Progress} from '../progress.ts';
import {situationOf} from './situation.ts';

/** Values that stand in the boxes, of all in the set that was decided. */
export function dialledIn(profile: Profile): Progress {
	const situation = situationOf(profile);
	if (situation.kind !== 'decided') return {state: 'page', answered: 0, required: 0};
	const values = situation.items.flatMap(item => item.values);
	const answered = values.filter(({isDone}) => isDone).length;
	const required = values.length;
	return {state: answered < required ? 'open' : 'done', answered, required};
}
