import type {Signal} from '../../../profile/types.ts';
import type {Uncertain} from '../../../science/numeric/uncertain.ts';

/** What a recording says of a row of the proof: within its limit, so that no meter is needed. */
export type SettledRow = {
	/** Against the prediction and what all mains have in common, dB. */
	readonly residualDb: number;
	/** Day of the recording, where it is known. */
	readonly date?: string;
};

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
	/** What a recording made with the settings in force says of it, within its limit: it need not be read. */
	readonly settled?: SettledRow;
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
