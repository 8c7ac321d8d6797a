import type {Signal} from '../../../profile/types.ts';
import type {Uncertain} from '../../../science/numeric/uncertain.ts';

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
	/** The prediction rests on it: subs that add up in phase, or that count as one source at a tone. */
	readonly assumption?: 'in-phase' | 'subs-as-one';
};

/** Why a reading of the second round is held against nothing. */
export type UnpredictedReason =
	| 'background'
	| 'hole'
	| 'weak cross term'
	| 'subs changed'
	| 'settings changed'
	| 'not read alone'
	| 'no first round';
