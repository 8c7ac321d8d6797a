import type {FindingOf, NoFacts, Remark} from '../../profile/finding.ts';
import type {BlendFacts} from './blend/facts.ts';
import type {CrossoverFacts} from './crossover/facts.ts';
import type {LevelFacts} from './levels/facts.ts';
import type {MissingFacts} from './readings/facts.ts';
import type {TimingFacts} from './timing/facts.ts';

/** What findings on a solution as a whole are said with. */
export type GeneralFacts = {
	'nothing-measured': NoFacts;
	'receiver-assumed': {
		readonly stepMs: number;
		readonly stepDb: number;
		readonly minimumDb: number;
		readonly maximumDb: number;
	};
	'temperature-assumed': NoFacts;
	'trims-assumed-zero': {readonly told: 'none' | 'some'};
	'output-unknown': NoFacts;
};

/** What findings on settings are said with, all topics of a solution together. */
export interface SolutionFacts
	extends BlendFacts,
		CrossoverFacts,
		GeneralFacts,
		LevelFacts,
		MissingFacts,
		TimingFacts {}

export type GeneralFinding = FindingOf<GeneralFacts>;

/** A finding of a solution, or one that still brings its text along. */
export type SolutionRemark = Remark | FindingOf<SolutionFacts>;
