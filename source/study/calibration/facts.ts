import type {FindingOf, NoFacts} from '../../profile/finding.ts';
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

export type SolutionFinding = FindingOf<SolutionFacts>;
