import type {FindingOf, NoFacts} from '../../../profile/finding.ts';
import type {Weighting} from '../../../profile/types.ts';
import type {TestSpectrum} from '../../../science/acoustics/band.ts';

/** The seat, where levels are made for several. */
type AtSeat = {readonly seat?: string};
type Weighted = AtSeat & {
	readonly weighting: Weighting;
	/** What the meter reads above the unweighted level. */
	readonly offDb: number;
	readonly signal: TestSpectrum;
};

/** What findings on levels and trims are said with. */
export type LevelFacts = {
	'background-too-high': AtSeat & {
		readonly levelDb: number;
		readonly aboveDb: number;
		readonly backgroundDb: number;
	};
	'background-near': AtSeat & {readonly aboveDb: number; readonly takenOffDb: number};
	'background-corrected': AtSeat & {readonly aboveDb: number; readonly takenOffDb: number};
	'weighting-far-off': Weighted;
	'weighting-corrected': Weighted;
	'level-spread': AtSeat & {
		readonly levelDb: number;
		readonly differenceDb: number;
		readonly repeats: number;
	};
	/** Nobody read it: what it was recorded above or below lines that were read. */
	'level-by-recording': AtSeat & {readonly against: readonly string[]; readonly sigmaDb: number};
	/** Outdated: they were read together, but under delays or polarities that will not stand. */
	'coherent-sum-assumed': {readonly gainDb: number; readonly isOutdated: boolean};
	'subs-beyond-coherent': {readonly excessDb: number};
	'subs-against-each-other': {readonly lackDb: number};
	'subs-not-matched': NoFacts;
	/** No entry brings it to its level: how far to turn its own knob so that its trim comes to about 0, and what entries lack. */
	'sub-far-off': {readonly turnDb: number; readonly missingDb: number};
	'master-volume': {readonly changeDb: number; readonly isHeard: boolean};
	'level-spread-does-not-fit': {
		readonly rangeDb: number;
		readonly lostDb: number;
		/** Worst first; loud is positive. */
		readonly outliers: ReadonlyArray<{readonly id: string; readonly loudDb: number}>;
		readonly turn: {readonly id: string; readonly way: 'down' | 'up'};
	};
	'trim-reason': {
		readonly targetDb: number;
		readonly levelDb: number;
		readonly gainInForceDb: number;
		readonly wantedDb: number;
		/** What is common to all and so left to the master volume; 0 where too little to tell. */
		readonly commonDb: number;
		readonly steppedDb: number;
	};
};

export type LevelFinding = FindingOf<LevelFacts>;
