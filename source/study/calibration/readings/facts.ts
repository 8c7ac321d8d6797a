import type {FindingOf, NoFacts} from '../../../profile/finding.ts';

/** What findings on readings are said with that are missing, or worth taking again. */
export type MissingFacts = {
	'distance-missing': {readonly seat: string; readonly isSub: boolean};
	'level-missing': {readonly seat: string};
	'level-decides-nothing': NoFacts;
	/** Chance that one more reading moves the result by a step. */
	'level-take-again': {readonly chance: number};
};

export type MissingFinding = FindingOf<MissingFacts>;

/** What explains a difference of two lengths, where the numbers tell. */
export type LengthSlip = 'one-foot' | 'one-metre' | 'ten-centimetres' | 'feet-as-metres' | 'metres-as-feet';

/** What findings on a reading are said with that was just typed. */
export type TypedFacts = {
	/** Meant: what was likely read, where a shift of the decimal point or a sign explains it. */
	'level-impossible': {readonly levelDb: number; readonly meantDb?: number};
	'background-impossible': {readonly levelDb: number};
	'background-loud': {readonly seat: string; readonly levelDb: number};
	'level-drowned': {
		readonly levelDb: number;
		readonly aboveDb: number;
		readonly backgroundDb: number;
		/** Whether nothing at all can be told from it. */
		readonly isLost: boolean;
	};
	/** Difference: above the repeats is positive. */
	'level-far-from-repeats': {
		readonly levelDb: number;
		readonly differenceDb: number;
		readonly repeats: number;
	};
	/** Difference: above the middle of the other channels is positive. */
	'level-far-from-others': {
		readonly levelDb: number;
		readonly differenceDb: number;
		readonly others: number;
	};
	/** How much too low the meter reads. */
	'weighting-a-on-sub': {readonly lowDb: number};
	/** How long ears bear the level in a day. */
	loud: {readonly levelDb: number; readonly hours: number};
	'tape-too-short': {readonly metres: number};
	'tape-beyond-room': {
		readonly metres: number;
		/** Absent where the size of the room is not known. */
		readonly room?: {readonly lengthMetres: number; readonly diagonalMetres: number};
		/** What it is where another unit was read, and which. */
		readonly meant?: {readonly readIn: 'feet' | 'centimetres'; readonly metres: number};
	};
	/** Difference: longer than the middle of the repeats is positive. */
	'tape-far-from-repeats': {
		readonly metres: number;
		readonly differenceMetres: number;
		readonly repeats: number;
		readonly middleMetres: number;
		readonly slip?: LengthSlip;
	};
	'tape-left-right': {
		readonly metres: number;
		readonly partner: string;
		readonly partnerMetres: number;
		/** What it is with two digits swapped back, where that explains it. */
		readonly swappedMetres?: number;
		readonly slip?: LengthSlip;
	};
};

export type TypedFinding = FindingOf<TypedFacts>;
