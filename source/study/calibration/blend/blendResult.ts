import type {BlendSetting} from './actions.ts';
import type {Offset} from './bestState.ts';
import type {BlendWay} from './odds.ts';
import type {PairResult} from './pair/pairResult.ts';
import type {BlendBlock} from './steps.ts';
import type {Estimate, SumReading} from './toneSum.ts';
import type {Trial} from './verification.ts';
import type {OfferedWay} from './ways.ts';

/** A front speaker with all subs at one tone. */
export type ToneResult = {
	readonly front: string;
	readonly hertz: number;
	readonly readings: readonly SumReading[];
	/**
	As it stands, and what a reading with the setting should show, the meter's scatter in its sigma; absent while the readings do
	not tell the tone at every delay, dB.
	*/
	readonly standsDb?: Estimate;
	readonly wantedDb?: Estimate;
	/** Place of the reading that is likeliest wrong, where no two sounds make these levels. */
	readonly impossibleIndex?: number;
};

/**
How far the blend is.

- `nothing`: no subs, or no front speaker with a crossover.
- `reading`: the readings so far allow several answers.
- `stands`: nothing that promises to be louder was found.
- `to try`: a setting to try, or on trial.
- `kept`, `put back`: verified.
*/
export type BlendStatus = 'nothing' | 'reading' | 'stands' | 'to try' | 'kept' | 'put back';

/** A setting of all subs that is to be tried, or was. */
export type WantedSetting = Offset & {
	/** Mean gain over tones and fronts, or of the loudest of the search, dB; absent where neither was read. */
	readonly gainDb?: Estimate;
	/** Against the set that stood; absent where no box delays the subs apart from the rest. */
	readonly setting?: BlendSetting;
	/** Whether the settings decided since hold it. */
	readonly isDecided: boolean;
};

export type BlendResult = {
	readonly seat: string;
	readonly way: BlendWay;
	readonly status: BlendStatus;
	readonly fronts: readonly string[];
	/** The front that is also verified alone. */
	readonly centre?: string;
	readonly subs: readonly string[];
	/** Of the fronts together, hertz. */
	readonly crossoverHertz: number;
	/** Arrival of the subs after the fronts with the set that stands, ms, and polarity. */
	readonly stands: Offset;
	readonly tones: readonly ToneResult[];
	/** Levels of the search, in the order of its steps; absent where not read. */
	readonly search: ReadonlyArray<{readonly levelDb?: number}>;
	readonly wanted?: WantedSetting;
	readonly trial?: Pick<Trial, 'frontsGainDb' | 'centreGainDb' | 'verdict'>;
	/** Every reading that this way asks for, in order, taken or not. */
	readonly blocks: readonly BlendBlock[];
	/** The subs against each other, where there are two lines of them that a box sets apart. */
	readonly pair?: PairResult;
	/** What each way takes and promises. */
	readonly ways: readonly OfferedWay[];
	/** The set that stands sets the subs otherwise to each other than they should: nothing is worth reading before it is dialled in. */
	readonly standsApart: boolean;
	/** Whether a recording wants them so: reading with the meter would then begin by undoing it. */
	readonly isSetByRecording: boolean;
	/** Whether a recording tells the subs apart, so that each can be set by itself. */
	readonly isToldApartByRecording: boolean;
	/** Places of readings that do not count: the subs stood otherwise to each other; tones with another crossover or levels; in the background. */
	readonly otherRelation: readonly number[];
	readonly otherSettings: readonly number[];
	readonly drowned: readonly number[];
	/** Places of tones of a front with some subs only, or with some of them turned. */
	readonly partly: readonly number[];
};

/** The verified setting of the subs, on top of what distances give. */
export type BlendWish = {
	/** Arrival of all subs after the fronts, their mean, ms: 0 is what distances give. */
	readonly offsetMs: number;
	readonly inverted: boolean;
	/** The same by sub: a recording may set one otherwise than the rest. */
	readonly subs: ReadonlyMap<string, {readonly laterMs: number; readonly isInverted: boolean}>;
	readonly frontsGainDb?: number;
	readonly centreGainDb?: number;
	/** The change between subs that is in it, with what it won through the LFE channel; whether it is all there is. */
	readonly pair?: {
		readonly subs: readonly string[];
		readonly laterMs: number;
		readonly isTurned: boolean;
		readonly lfeGainDb: number;
		readonly isAlone: boolean;
	};
	/** Where it was found from recordings: expected until one more playing has said more, then as that has it. */
	readonly recorded?: {readonly gainDb: number; readonly isVerified: boolean};
};
