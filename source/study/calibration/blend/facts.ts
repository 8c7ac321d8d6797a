import type {FindingOf, NoFacts} from '../../../profile/finding.ts';

/** What findings on what the settings owe to the blend are said with. */
export type BlendFacts = {
	/** On top of what distances give; a gain is absent where it was not read. */
	blended: {
		readonly laterMs: number;
		readonly isTurned: boolean;
		readonly frontsGainDb?: number;
		readonly centreGainDb?: number;
	};
	/** Against the other subs, on top of what distances give, as verified through the LFE channel. */
	'pair-changed': {readonly laterMs: number; readonly isTurned: boolean; readonly lfeGainDb: number};
	/** Through the crossover, expected until one more playing has verified it. */
	'blended-by-recording': {readonly gainDb: number; readonly isVerified: boolean};
	'tones-not-used': NoFacts;
	/** Neither receiver nor processor turns its polarity. */
	'polarity-at-sub': NoFacts;
};

export type BlendFinding = FindingOf<BlendFacts>;
