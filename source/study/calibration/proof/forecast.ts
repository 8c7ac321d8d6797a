import type {BoxState} from '../../../profile/ask/boxState.ts';
import type {Signal} from '../../../profile/types.ts';
import type {ProofPlanItem} from './planItem.ts';

/** Forecasts what the meter shows of one thing under any settings. */
export type Predictor = {
	readonly key: string;
	readonly atoms: readonly string[];
	readonly seat: string;
	readonly weighting: 'A' | 'C' | 'Z';
	readonly signal: Signal;
	readonly shows: ProofPlanItem['shows'];
	/** What the forecast rests on that nobody measured. */
	readonly assumption?: ProofPlanItem['assumption'];
	/** Standard uncertainty of the forecast, dB. */
	readonly sigmaDb: number;
	/** Of sources together: how far their sum is expected below their energy sum, dB. */
	readonly depthDb?: number;
	/** Of sources together: level below which a cancellation is not told by its depth, dB. */
	readonly floorDb?: number;
	/** Level as the meter shows it, dB. */
	readonly level: (state: BoxState) => number;
};
