import {bassManagement} from '../../../profile/ask/bassManagement.ts';
import type {SetInForce} from '../../../profile/ask/settings.ts';
import {lfeTopHertz} from '../../../profile/practice.ts';
import type {Profile} from '../../../profile/types.ts';
import {filterResponse} from '../../../science/acoustics/filters/response.ts';
import {shapedFilter} from '../../../science/acoustics/filters/shape.ts';
import {crossoverUnder} from '../crossoverOf.ts';
import {responseFrequencies} from '../responses.ts';
import type {StatedLowPasses} from './fromLfe.ts';

/**
The low-passes that receiver and settings state: of each crossover, and of the LFE channel. A low-pass of the LFE channel that
nobody states counts as standing where its content ends; how the sweeps agree tells whether it does.
*/
export function statedLowPasses(
	profile: Profile,
	set: (SetInForce & {readonly lfeLowPassHertz?: number | undefined}) | undefined,
): StatedLowPasses {
	const frequencies = responseFrequencies();
	const {lowPass} = bassManagement(profile.receiver?.crossover);
	const of = (hertz: number) => filterResponse(shapedFilter('low', lowPass, hertz), frequencies);
	return {
		crossoverOf: channel => crossoverUnder(profile, set, channel),
		ofCrossover: of,
		ofLfe: of(set?.lfeLowPassHertz ?? lfeTopHertz),
	};
}
