import type {Profile} from '../../profile/types.ts';
import {finished} from '../../science/numeric/finished.ts';
import type {NetworkResult} from '../survey/result.ts';
import {planBench} from './planBench.ts';
import {type PlanSearchStep, searchPlan} from './planSearch.ts';
import {planSpace} from './planSpace.ts';
import type {ArrangementRow} from './row.ts';

/** What is asked of whoever searches on another thread. */
export type SearchOrder = {readonly kind: 'search'; readonly profile: Profile};

/** What comes back. */
export type SearchNews =
	| {readonly kind: 'searching'; readonly step: PlanSearchStep}
	/** The whole ladder: the search is at its end. */
	| {readonly kind: 'searched'; readonly rows: readonly ArrangementRow[]}
	/** No thread could be started, or it ended by itself. */
	| {readonly kind: 'searchTrouble'; readonly text: string};

/**
Searches a profile's room from its beginning. A generator: it yields every few milliseconds.

@returns The rows of the ladder; none where the room cannot be judged.
*/
export function* searchProfile(
	profile: Profile,
	network: NetworkResult,
): Generator<PlanSearchStep, readonly ArrangementRow[]> {
	const found = planSpace(profile, network);
	if (!found.shape) return [];
	const {space} = found;
	const bench = planBench(space);
	const now = finished(
		bench.judging({
			subs: space.subs.map(({at}) => at),
			seats: space.seats.map(({at}) => at),
			lifted: 0,
		}),
	);
	return yield* searchPlan(profile, space, bench, now);
}
