import type {Profile} from '../../profile/types.ts';
import type {CrossoverSuggestion} from './crossover/result.ts';
import {suggestCrossovers} from './crossover/suggest.ts';

/** All that the suggestion looks at, beside the channels themselves. */
type Looked = readonly [
	Profile['subs'],
	NonNullable<Profile['receiver']>['crossover'] | undefined,
	boolean | undefined,
	boolean | undefined,
];

/** Held as long as the list of channels lives, so that nothing piles up. */
const remembered = new WeakMap<
	Profile['channels'],
	{readonly looked: Looked; readonly suggestion: CrossoverSuggestion}
>();

/**
The crossover suggestion of a profile, computed once for the same gear.
No reading enters it, and a solution is wanted at every key press.
*/
export function crossoversOf(profile: Profile): CrossoverSuggestion {
	const {channels, subs, receiver, bassProcessor} = profile;
	const looked: Looked = [subs, receiver?.crossover, receiver?.invertsSubs, bassProcessor?.invertsOutputs];
	const known = remembered.get(channels);
	if (known?.looked.every((part, index) => part === looked[index])) return known.suggestion;
	const suggestion = suggestCrossovers(profile);
	remembered.set(channels, {looked, suggestion});
	return suggestion;
}
