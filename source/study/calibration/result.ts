import type {ChannelId} from '../../profile/types.ts';
import type {Uncertain} from '../../science/numeric/uncertain.ts';
import type {SolutionFinding} from './facts.ts';

/** A value to dial in: as computed, as the box takes it, and its standard uncertainty, all in one unit. */
export type Dialled = {readonly exact: number; readonly stepped: number; readonly sigma: number};

export type DistanceResult = {
	readonly metres: number;
	readonly sigmaMetres: number;
	/** One reading, the mean of several, the adjusted tape network where that is better, or a recording where nothing was taped. */
	readonly from: 'reading' | 'repeats' | 'network' | 'recording';
	readonly readings: number;
};

export type LevelResult = {
	/** Energy mean at the target seat(s), background, weighting and meter offset corrected, dB. */
	readonly decibels: number;
	readonly sigmaDb: number;
	readonly repeats: number;
	/** Largest minus smallest of the repeats, dB. */
	readonly spreadDb: number;
	readonly backgroundCorrectionDb: number;
	readonly weightingCorrectionDb: number;
};

/** What to type into the receiver for one channel. For LFE channels it concerns the sub output. */
export type ChannelSolution = {
	readonly id: ChannelId;
	readonly distance?: DistanceResult;
	/** Time from the receiver's output to the reference seat, ms: flight plus latencies. */
	readonly arrivalMs?: Uncertain;
	/** Delay to add, ms, or distance to enter, metres, after the receiver's kind of entry. */
	readonly timing?: Dialled & {readonly kind: 'delay' | 'distance'};
	readonly level?: LevelResult;
	readonly trimDb?: Dialled;
	readonly crossoverHertz?: number | 'full';
	readonly polarityInverted?: boolean;
	readonly remarks: readonly SolutionFinding[];
};

/** What one output of the bass processor takes. */
export type OutputSolution = {
	readonly id: string;
	readonly subs: readonly string[];
	readonly delayMs?: Dialled;
	readonly gainDb?: Dialled;
	readonly polarityInverted?: boolean;
	readonly remarks: readonly SolutionFinding[];
};

/** What was found out about one sub. */
export type SubSolution = {
	readonly id: string;
	readonly fedBy: 'LFE1' | 'LFE2';
	readonly output?: string;
	readonly distance?: DistanceResult;
	readonly arrivalMs?: Uncertain;
	readonly level?: LevelResult;
	readonly remarks: readonly SolutionFinding[];
};

export type Solution = {
	readonly seat: string;
	readonly speedOfSound: {
		readonly metresPerSecond: number;
		readonly formula: string;
		/** Standard uncertainty that the temperature causes, m/s. */
		readonly sigma?: number;
	};
	readonly channels: readonly ChannelSolution[];
	readonly subs: readonly SubSolution[];
	readonly outputs: readonly OutputSolution[];
	/** Seats that the levels are made for. */
	readonly levelSeats: readonly string[];
	/** Low-pass of the LFE channel, where the receiver has choices. */
	readonly lfeLowPassHertz?: number;
	/** What trims leave in common, for they only match channels to each other: a change of the master volume, dB. */
	readonly masterVolumeChangeDb?: number;
	/** How far to turn it: 0 where that is less than the box can do, or anybody hears, dB. */
	readonly masterVolumeTurnDb?: number;
	/** The master volume after that change, where the readings say at which one they were taken, dB. */
	readonly masterVolumeDb?: number;
	/** Worst pairwise timing error that rounding and limits leave, ms. */
	readonly worstTimingErrorMs?: number;
	/** Worst pairwise level error that rounding and limits leave, dB. */
	readonly worstLevelErrorDb?: number;
	readonly remarks: readonly SolutionFinding[];
};
