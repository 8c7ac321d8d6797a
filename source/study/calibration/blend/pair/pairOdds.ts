import type {Odds} from '../odds.ts';

/** What a change between subs, and tones after it, did against the same without: the LFE channel's bass, fronts and centre. */
export type PairOdds = {
	readonly [Kit in 'known' | 'hidden']: {readonly lfe: Odds; readonly fronts: Odds; readonly centre: Odds};
} & {readonly rooms: number};

/**
What it did in the project's own simulated rooms (`npm run truth -- pair --range fresh`), against distances alone.

Made on 2026-11-26 in rooms not used while building.
*/
export const oddsOfPair: PairOdds = {
	known: {
		lfe: {wonPercent: 0, lostPercent: 0},
		fronts: {wonPercent: 0, lostPercent: 0},
		centre: {wonPercent: 0, lostPercent: 0},
	},
	hidden: {
		lfe: {wonPercent: 0, lostPercent: 0},
		fronts: {wonPercent: 0, lostPercent: 0},
		centre: {wonPercent: 0, lostPercent: 0},
	},
	rooms: 0,
};
