import {type CrossoverChoice, inOrder} from './rank.ts';

/** One frequency for all channels: mean of their costs, and below the limit as soon as one channel is. */
export type CommonChoice = {readonly hertz: number; readonly belowLimit: boolean; readonly cost: number};

/**
Ranks choices for all channels at once.

@param rankings - One ranking a channel, all of the same choices.
@returns Best first; empty without channels.
*/
export function rankCommon(rankings: ReadonlyArray<readonly CrossoverChoice[]>): CommonChoice[] {
	const [first] = rankings;
	if (!first) return [];
	return inOrder(
		first.map(({hertz}) => {
			const same = rankings.map(ranking => ranking.find(choice => choice.hertz === hertz)!);
			return {
				hertz,
				belowLimit: same.some(({belowLimit}) => belowLimit),
				cost: same.reduce((sum, {cost}) => sum + cost, 0) / same.length,
			};
		}),
	);
}
