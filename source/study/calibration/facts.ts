import type {FindingOf, Remark} from '../../profile/finding.ts';
import type {CrossoverFacts} from './crossover/facts.ts';

/** What findings on settings are said with, all topics of a solution together. */
export interface SolutionFacts extends CrossoverFacts {}

/** A finding of a solution, or one that still brings its text along. */
export type SolutionRemark = Remark | FindingOf<SolutionFacts>;
