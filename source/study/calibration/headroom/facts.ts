import type {FindingOf, NoFacts} from '../../../profile/finding.ts';

/** What a level in reach cannot be told without. */
export type HeadroomLack =
	| 'sensitivity'
	| 'amplifier power'
	| 'impedance'
	| 'distance'
	| 'largest level of each sub'
	| 'distances of the subs';

/** What findings on headroom are said with. A channel, or `subs` for all of them together. */
export type HeadroomFacts = {
	'headroom-unknown': {readonly missing: readonly HeadroomLack[]; readonly needsTape: boolean};
	'sensitivity-kind-unknown': NoFacts;
	'headroom-nothing-known': NoFacts;
	/** The master volume at which it gives out, and the seat where it does. */
	'first-to-give-out': {readonly seat: string; readonly masterVolumeDb: number};
	'sensitivity-assumes': NoFacts;
	'sub-load': {readonly redirected: number};
	'full-range-excursion': NoFacts;
};

export type HeadroomFinding = FindingOf<HeadroomFacts>;
