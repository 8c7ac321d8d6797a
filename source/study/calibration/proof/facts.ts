import type {FindingOf, NoFacts} from '../../../profile/finding.ts';
import type {ProofPlanItem, UnpredictedReason} from './planItem.ts';

/** A box's control that was to be set: an output of the processor, a channel of the receiver, or the lines of all subs. */
export type SetControl = {readonly box: 'receiver' | 'processor' | 'all subs'; readonly id: string};

type Entry = {readonly control: SetControl; readonly standsDb: number; readonly shouldDb: number};

/** One reading, as a sentence names it. */
export type NamedReading = Pick<ProofPlanItem, 'source' | 'seat' | 'signal'>;

/** Slips that may have been made when settings were typed in. */
export type SlipFacts = {
	'slip-sign': Entry;
	'slip-forgotten': Entry;
	'slip-other-step': Entry;
	'slip-swapped': {
		readonly first: Entry['control'] & {readonly shouldDb: number};
		readonly second: Entry['control'] & {readonly shouldDb: number};
	};
	'slip-all-signs': {readonly examples: ReadonlyArray<{readonly id: string; readonly shouldDb: number}>};
	'slip-all-forgotten': {readonly examples: ReadonlyArray<{readonly id: string; readonly shouldDb: number}>};
	'slip-polarity': {readonly control: SetControl};
	'slip-sub-delay-forgotten': {readonly control: SetControl; readonly offMs: number};
	'slip-sub-delay': {readonly control: SetControl; readonly offMs: number};
	'slip-crossover': {readonly stands: number | 'full'; readonly should: number | 'full'};
	'slip-unexplained': {readonly offDb: number};
};

/** What a second round lets say, with its facts. */
export type ProofFacts = SlipFacts & {
	'proof-settings-missing': NoFacts;
	'proof-first-round-missing': NoFacts;
	'proof-second-round-missing': {readonly count: number; readonly set: string};
	'proof-settings-stale': NoFacts;
	'proof-master-moved': {readonly shiftDb: number};
	'proof-look-again': {readonly readings: readonly NamedReading[]};
	'proof-left-out': {readonly readings: readonly NamedReading[]};
	'proof-unjudged': {readonly readings: readonly NamedReading[]; readonly reason: UnpredictedReason};
	'proof-assumption': {readonly assumption: NonNullable<ProofPlanItem['assumption']>};
	/** What no meter can find, said with every round that is met. */
	'proof-not-found-by-meter': NoFacts;
};

export type ProofFinding = FindingOf<ProofFacts>;
