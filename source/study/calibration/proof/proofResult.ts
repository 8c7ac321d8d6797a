import type {Signal} from '../../../profile/types.ts';
import type {Remark, Uncertain} from '../result.ts';

/** What one reading of the second round should show, and why it is worth taking. */
export type ProofPlanItem = {
	/** Stable name: seat, sources and signal. */
	readonly key: string;
	readonly source: readonly string[];
	readonly name: string;
	readonly seat: string;
	readonly seatName: string;
	readonly weighting: 'A' | 'C' | 'Z';
	readonly signal: Signal;
	/** As the meter will show it, dB. */
	readonly predicted: Uncertain;
	readonly shows: 'level' | 'subs together' | 'blend';
	/** Second-round readings of it so far. */
	readonly taken: number;
	/** The prediction rests on an assumption, such as subs that add up in phase. */
	readonly assumption?: string;
};

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
	/** Largest residual that still counts as met, dB: the one asked for, or what the uncertainty allows. */
	readonly tolerance: number;
	/** `unclear`: beyond the tolerance asked for, but not beyond the uncertainty; a repeat would tell. */
	readonly verdict: 'met' | 'unclear' | 'missed';
};

/** One thing that went wrong when the settings were typed in. */
export type Mistake = {
	readonly kind:
		| 'sign'
		| 'forgotten'
		| 'other step'
		| 'swapped'
		| 'polarity'
		| 'sub delay forgotten'
		| 'sub delay'
		| 'crossover'
		| 'all signs'
		| 'all forgotten'
		| 'something else';
	/** Channels, subs or outputs that it concerns. */
	readonly about: readonly string[];
	/** What would then stand in the box, or how far it is off, in words. */
	readonly text: string;
	/** The check that confirms or refutes it. */
	readonly check: string;
};

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
	/** `none`: there is no second round. */
	readonly verdict: 'met' | 'missed' | 'none';
	/** Asked for, dB. */
	readonly toleranceDb: number;
	/** Residuals beyond this many standard uncertainties are put down to something other than chance. */
	readonly criticalValue: number;
	readonly readings: readonly ProofReading[];
	/** One shift of all residuals, dB, where it is beyond chance. */
	readonly masterShiftDb?: Uncertain;
	readonly findings: readonly Finding[];
	/** Predicted, but not read yet. */
	readonly missing: readonly ProofPlanItem[];
	readonly remarks: readonly Remark[];
};
