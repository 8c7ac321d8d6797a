import type {BoxState} from '../../../profile/ask/boxState.ts';
import type {Mistake} from './proofResult.ts';

/** A mistake that may have been made, what would then stand in the boxes, and how often it happens. */
export type SlipCandidate = {
	readonly mistake: Mistake;
	readonly change: (state: BoxState) => BoxState;
	/** Natural logarithm of the share of rounds in which it happens. Common practice, no source. */
	readonly logPrior: number;
};
