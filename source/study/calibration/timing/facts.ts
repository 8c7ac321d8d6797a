import type {FindingOf} from '../../../profile/finding.ts';
import type {Receiver} from '../../../profile/types.ts';

/** What is typed in, and how it follows from the arrival. */
export type TimingEntry =
	| {
			readonly kind: 'distance';
			/** Speed with which the receiver makes a delay of it, m/s. */
			readonly receiverSpeed: number;
			readonly exactMetres: number;
			readonly steppedMetres: number;
			readonly shownAs: Extract<Receiver['timing'], {kind: 'distance'}>;
	  }
	| {
			readonly kind: 'delay';
			readonly exactMs: number;
			readonly steppedMs: number;
			/** The last to arrive, where that is another. */
			readonly last?: {readonly id: string; readonly arrivalMs: number};
	  };

/** What findings on distances and timing are said with. */
export type TimingFacts = {
	'distance-from-network': {readonly metres: number; readonly directMetres?: number};
	'distance-from-recording': {readonly metres: number; readonly sigmaMetres: number};
	'distance-suspected': {readonly readMetres: number; readonly networkMetres: number};
	'tape-spread': {readonly metres: number; readonly differenceMetres: number; readonly repeats: number};
	'timing-reason': {
		readonly metres: number;
		readonly metresPerSecond: number;
		readonly latencies: ReadonlyArray<{readonly at: string; readonly milliseconds: number}>;
		readonly arrivalMs: number;
		readonly entry: TimingEntry;
	};
	/** All entries lie this far from what they stand for, so that they fit steps and range. */
	'distances-shifted-together': {readonly metres: number};
	/** A distance to enter that is longer than the tape's by what latencies make. */
	'entry-holds-latency': {
		readonly metres: number;
		readonly latencies: ReadonlyArray<{readonly at: string; readonly milliseconds: number}>;
	};
	'timing-spread-does-not-fit': {
		readonly spreadMs: number;
		readonly rangeMs: number;
		readonly lostMs: number;
		/** Worst first; late is positive. */
		readonly outliers: ReadonlyArray<{readonly id: string; readonly lateMs: number}>;
		readonly remedy:
			| {readonly kind: 'latency'; readonly id: string; readonly at: string; readonly milliseconds: number}
			| {readonly kind: 'move'; readonly nearer: string; readonly farther: string; readonly metres: number};
	};
	'subs-share-output': {readonly subs: readonly string[]; readonly apartMs: number};
};

export type TimingFinding = FindingOf<TimingFacts>;
