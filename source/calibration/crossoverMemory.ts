import type {Profile} from '../profile/types.ts';
import {type CrossoverSuggestion, suggestCrossovers} from './crossover/suggest.ts';

type Entry = Pick<Profile, 'subs' | 'receiver' | 'bassProcessor'> & {
	readonly suggestion: CrossoverSuggestion;
};

/** Held as long as the list of channels lives, so that nothing piles up. */
const remembered = new WeakMap<Profile['channels'], Entry>();

/**
The crossover suggestion of a profile, computed once for the same gear.
No reading enters it, and a solution is wanted at every key press.
*/
export function crossoversOf(profile: Profile): CrossoverSuggestion {
	const {channels, subs, receiver, bassProcessor} = profile;
	const known = remembered.get(channels);
	if (known && known.subs === subs && known.receiver === receiver && known.bassProcessor === bassProcessor) {
		return known.suggestion;
	}

	const suggestion = suggestCrossovers(profile);
	remembered.set(channels, {subs, receiver, bassProcessor, suggestion});
	return suggestion;
}
