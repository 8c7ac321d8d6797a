import type {FindingOf} from '../../../profile/finding.ts';
import type {Uncertain} from '../../../science/numeric/uncertain.ts';
import type {ProofFinding, SlipFacts} from './facts.ts';
import type {ProofPlanItem, UnpredictedReason} from './planItem.ts';

/** One prediction held against what was read. */
export type ProofReading = ProofPlanItem & {
	/** Energy mean of the readings, dB. */
	readonly read: Uncertain;
	/** Read minus predicted, dB. */
	readonly rawResidual: number;
	/** The same with a moved master volume taken out. */
	readonly residual: number;
	/** Standard uncertainty of the residual, dB. */
	readonly sigma: number;
	/** Largest residual that still counts as met, dB. */
	readonly tolerance: number;
	/** `again`: not clear yet; the meter put down anew and read again decides. */
	readonly verdict: 'met' | 'again' | 'missed';
};

/** A reading of the second round that is held against nothing, and why. */
export type UnjudgedReading = Pick<ProofPlanItem, 'key' | 'source' | 'seat' | 'signal'> & {
	readonly reason: UnpredictedReason;
};

/** One thing that went wrong when the settings were typed in. */
export type Mistake = FindingOf<SlipFacts>;

/** One or more mistakes that together explain some residuals. */
export type Explanation = {
	readonly mistakes: readonly Mistake[];
	/** Share of the probability among the explanations of the same residuals, 0 to 1. */
	readonly likelihood: number;
	/** Misfit of the whole round under it; smaller is better. */
	readonly chiSquare: number;
	/** `certain` only where it is far ahead and its effect far above the uncertainty. */
	readonly trust: 'certain' | 'likely' | 'possible';
};

/** Residuals that belong together, with everything that explains them, likeliest first. */
export type Finding = {
	/** Keys of the readings concerned. */
	readonly readings: readonly string[];
	readonly explanations: readonly Explanation[];
};

export type ProofResult = {
	/**
	`met`: every reading asked for was read, judged and within its limit. `open`: some are not read, not judged or to be read
	again, and none is missed. `none`: there is no second round.
	*/
	readonly verdict: 'met' | 'missed' | 'open' | 'none';
	readonly readings: readonly ProofReading[];
	/** What all mains have in common, dB; taken out first. `isMoved`: beyond chance. */
	readonly masterShiftDb?: Uncertain & {readonly isMoved: boolean};
	/** Read in the second round and held against nothing. */
	readonly unjudged: readonly UnjudgedReading[];
	readonly findings: readonly Finding[];
	/** Closed by a recording made with the settings in force, and not read. */
	readonly recorded?: readonly ProofPlanItem[];
	/** Predicted, but not read yet. */
	readonly missing: readonly ProofPlanItem[];
	readonly remarks: readonly ProofFinding[];
};
