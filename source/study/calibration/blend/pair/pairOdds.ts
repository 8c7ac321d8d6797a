import type {Odds} from '../odds.ts';

/** What a change between subs, and tones after it, did against distances alone: to the LFE channel's bass, fronts and centre. */
export type PairOdds = {
	readonly [Kit in 'known' | 'hidden']: {readonly lfe: Odds; readonly fronts: Odds; readonly centre: Odds};
} & {readonly rooms: number};

/**
What it did in the project's own simulated rooms (`npm run truth -- pair --range fresh`), against distances alone.

Made on 2026-11-26 in rooms not used while building.
*/
export const oddsOfPair: PairOdds = {
	known: {
		lfe: {wonPercent: 17, lostPercent: 2},
		fronts: {wonPercent: 35, lostPercent: 0},
		centre: {wonPercent: 30, lostPercent: 4},
	},
	hidden: {
		lfe: {wonPercent: 44, lostPercent: 1},
		fronts: {wonPercent: 67, lostPercent: 0},
		centre: {wonPercent: 64, lostPercent: 2},
	},
	rooms: 250,
};
