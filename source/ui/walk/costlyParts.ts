import type {Profile} from '../../profile/types.ts';
import type {CrossoverSuggestion} from '../../study/calibration/crossover/result.ts';
import {suggestCrossovers} from '../../study/calibration/crossover/suggest.ts';
import type {Parts} from '../../study/calibration/parts.ts';
import {derived} from '../derived.ts';
import {tapedNetworkOf} from './sceneOf.ts';

/** Suggested crossovers; no reading enters them. */
export const crossoversOf: (profile: Profile) => CrossoverSuggestion = derived(
	{
		channels: ({channels}: Profile) => channels,
		subs: ({subs}: Profile) => subs,
		receiver: ({receiver}: Profile) => receiver,
		bassProcessor: ({bassProcessor}: Profile) => bassProcessor,
	},
	suggestCrossovers,
);

/** The costly parts of a solution, each computed anew only when what it hangs on changes. */
export const costlyParts: (profile: Profile) => Parts = derived(
	{survey: tapedNetworkOf, crossovers: crossoversOf},
	parts => parts,
);
