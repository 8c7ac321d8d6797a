import type {ChannelId} from '../../../profile/types.ts';
import type {HeadroomFinding, HeadroomLack} from './facts.ts';

export type SeatHeadroom = {
	readonly seat: string;
	/** Level that can be reached there, dB. */
	readonly reachDb?: number;
	/** Reach minus what reference gain asks for, dB; this is also the master volume at which it gives out. */
	readonly marginDb?: number;
	readonly distanceM?: number;
};

export type SourceHeadroom = {
	/** A channel with a speaker, or `subs` for all subs of one LFE channel together. */
	readonly source: ChannelId | 'subs';
	readonly subs?: readonly string[];
	/** What reference gain asks for at the seat, dB. */
	readonly neededDb: number;
	readonly crossoverHertz?: number | 'full';
	readonly seats: readonly SeatHeadroom[];
	/** What is missing; empty where the level could be told. */
	readonly missing: readonly HeadroomLack[];
};

export type HeadroomResult = {
	readonly sources: readonly SourceHeadroom[];
	/** The source with the smallest margin, its seat, and the master volume (reference = 0 dB) at which it gives out. */
	readonly first?: {
		readonly source: SourceHeadroom['source'];
		readonly seat: string;
		readonly masterVolumeDb: number;
	};
	readonly roomGainDb: number;
	readonly remarks: readonly HeadroomFinding[];
};
