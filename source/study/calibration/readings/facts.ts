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
