import type {FindingOf, NoFacts} from '../../profile/finding.ts';

/**
What stands in for a reading that is missing: the usual side, where two places fit the readings alike, or a usual
direction. Such a point is never determined, and nothing is judged from it.
*/
export type AssumedBy = 'side' | 'direction';

/** One way in which a wrong reading may have come about, and the value it would then be. */
export type SlipCause = {
	readonly code: string;
	readonly metres: number;
	/** Of a slip of a fixed size: whether the reading is too long by it. */
	readonly isLong?: boolean;
	/** What the tape was held to instead, and at which end. */
	readonly end?: 'from' | 'to';
	readonly instead?: string;
	/** Distance of that value from what the network expects, in sigmas. */
	readonly misfit: number;
};

/** A reading: two ends and what was read between them. */
export type ReadingFacts = {readonly from: string; readonly to: string; readonly metres: number};

type Open = {
	/** Other ends of the readings that would fix it, in order. */
	readonly missing: readonly string[];
	readonly assumedBy?: AssumedBy;
};

/** What is taken for granted of a thing, or of the room, where no reading ties the drawing to the walls. */
export type ConventionFact =
	| {
			readonly what:
				| 'mid-width'
				| 'usual-distance'
				| 'usual-height'
				| 'straight-ahead'
				| 'usual-direction'
				| 'usual-height-above-ear';
			readonly about: string;
	  }
	| {readonly what: 'room-width' | 'room-length' | 'room-height'};

/** What findings on a survey are said with. A reading is told of the end that it was taken from. */
export type SurveyFacts = {
	'tape-none': NoFacts;
	'tape-blunder': ReadingFacts & {
		readonly expectedMetres: number;
		readonly expectedSigmaMetres: number;
		/** Read minus expected. */
		readonly errorMetres: number;
		readonly causes: readonly SlipCause[];
		/** Readings that could be the wrong one instead. */
		readonly alternatives: ReadonlyArray<{readonly from: string; readonly to: string}>;
	};
	'tape-same-ends': ReadingFacts;
	/** `end` is neither a point nor a plane; an LFE channel feeds several subs or none. */
	'tape-unknown-end': ReadingFacts & {readonly end: string; readonly isLfe: boolean};
	'tape-planes-meet': ReadingFacts;
	'tape-slope-height': ReadingFacts;
	'tape-zero': ReadingFacts & {readonly arePlanes: boolean};
	'tape-more': {readonly count: number};
	'tape-many': NoFacts;
	'tape-global': NoFacts;
	'tape-one-plane': {readonly plane: string};
	'tape-apart': NoFacts;
	/** Several things; `begin` is the reading to take first. */
	'tape-open': {readonly begin?: {readonly from: string; readonly to: string}};
	'tape-weak': Open;
	'tape-undetermined': Open;
	'tape-unmeasured': Open;
	'tape-unchecked': NoFacts;
	'tape-mirror-room': NoFacts;
	'tape-mirror-side': NoFacts;
	'tape-mirror': NoFacts;
	'tape-free': {readonly conventions: readonly ConventionFact[]};
};

/** What a survey finds to say. */
export type SurveyFinding = FindingOf<SurveyFacts>;
