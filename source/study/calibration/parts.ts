import type {Profile} from '../../profile/types.ts';
import type {NetworkResult} from '../survey/result.ts';
import type {CrossoverSuggestion} from './crossover/result.ts';
import {suggestCrossovers} from './crossover/suggest.ts';

/** What is costly to find out about a profile, handed in to whatever is computed from it. */
export type Parts = {
	/** The adjusted tape network; absent where distances are taken from their own readings alone. */
	readonly survey?: NetworkResult | undefined;
	readonly crossovers: CrossoverSuggestion;
};

/** The costly parts of a profile whose tape network is adjusted already. */
export function partsWith(profile: Profile, survey: NetworkResult | undefined): Parts {
	return {survey, crossovers: suggestCrossovers(profile)};
}
