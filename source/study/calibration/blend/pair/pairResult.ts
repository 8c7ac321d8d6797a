import type {BlendSetting} from '../actions.ts';
import type {BlendBlock} from '../steps.ts';
import type {Estimate, SumReading} from '../toneSum.ts';
import type {PairCost} from './pairCost.ts';
import type {PairOdds} from './pairOdds.ts';
import type {PairTrial} from './pairTrial.ts';

/** Both lines of subs together at one tone. */
export type PairTone = {
	readonly hertz: number;
	/** `laterMs`: the second line after the first, as distances would have it at 0. */
	readonly readings: readonly SumReading[];
	/** As it stands, and with what is to be tried, dB; absent while the readings do not tell every delay. */
	readonly standsDb?: Estimate;
	readonly wantedDb?: Estimate;
	/** Place of the reading that is likeliest wrong, where no two sounds make these levels. */
	readonly impossibleIndex?: number;
};

/** A change of some subs against the others that is to be tried, or was. */
export type PairWanted = {
	/** Subs that move. */
	readonly subs: readonly string[];
	readonly addedMs: number;
	readonly isTurned: boolean;
	/** Mean over the tones, dB; absent where they were not read. */
	readonly gainDb?: Estimate;
	/** Against the set that stands; absent where no box makes it. */
	readonly setting?: BlendSetting;
	/** Whether the settings decided since hold it. */
	readonly isDecided: boolean;
};

/**
How far a change between subs is.

- `reading`: the readings so far allow several answers.
- `stands`: nothing that promises to be louder was found.
- `to try`: a change to try, or on trial.
- `kept`, `put back`: verified.
*/
export type PairStatus = 'reading' | 'stands' | 'to try' | 'kept' | 'put back';

/** Two subs, or two groups of them on lines of their own, against each other: an extra for the bass of the LFE channel. */
export type PairResult = {
	readonly status: PairStatus;
	readonly tones: readonly PairTone[];
	readonly wanted?: PairWanted;
	readonly trial?: Pick<PairTrial, 'gainsDb' | 'verdict'>;
	/** Every reading that it asks for, in order, taken or not. */
	readonly blocks: readonly BlendBlock[];
	/** What it takes and what it did in simulated rooms. */
	readonly cost: PairCost;
	readonly odds: PairOdds;
	/** Readings through the crossover that would no longer count. */
	readonly outdates: number;
};
