import type {Profile} from '../../../profile/types.ts';
import {benchOf} from '../bench.ts';
import type {CrossoverSuggestion} from '../crossover/result.ts';
import type {Parts} from '../parts.ts';
import {arrivalsOf} from '../timing/arrivals.ts';
import type {BlendInputs} from './inputs.ts';

/**
What the blend is computed from, found in a profile.

@param parts - The costly parts, where they are at hand.
*/
export function blendInputs(profile: Profile, parts: Parts): BlendInputs {
	return {
		profile,
		arrivalsMs: arrivalsOf(benchOf(profile, parts)).arrivalsMs,
		suggestedHertz: suggestedHertz(parts.crossovers),
	};
}

/** Crossover of each channel as suggested. */
export function suggestedHertz({channels}: CrossoverSuggestion): BlendInputs['suggestedHertz'] {
	return new Map([...channels].map(([id, {hertz}]) => [id as string, hertz] as const));
}
