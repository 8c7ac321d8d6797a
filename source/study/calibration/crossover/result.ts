import type {ChannelId} from '../../../profile/types.ts';
import type {CommonChoice} from './common.ts';
import type {CrossoverFinding, CrossoverReason, CrossoverStep, FullRangeReason} from './facts.ts';
import type {CrossoverChoice} from './rank.ts';

export type FullRangeVerdict = {readonly defensible: boolean; readonly why: FullRangeReason};

export type ChannelCrossover = {
	readonly hertz: number | 'full';
	readonly reasons: readonly CrossoverReason[];
	/** Every choice, best first; empty where there is no sub. */
	readonly ranking: readonly CrossoverChoice[];
	/** What changes with the next choice down and up. */
	readonly oneDown?: CrossoverStep;
	readonly oneUp?: CrossoverStep;
	/** The speaker's half-power limit, hertz; the usual one where `limitAssumed`. */
	readonly limitHertz: number;
	readonly limitAssumed: boolean;
	readonly fullRange: FullRangeVerdict;
};

export type CrossoverSuggestion = {
	/** By channel; LFE channels have none. */
	readonly channels: ReadonlyMap<ChannelId, ChannelCrossover>;
	/** Where the receiver takes one frequency for all. */
	readonly common?: {readonly hertz: number; readonly ranking: readonly CommonChoice[]};
	readonly lfeLowPassHertz?: number;
	readonly remarks: readonly CrossoverFinding[];
};
