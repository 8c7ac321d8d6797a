import type {Uncertain} from '../../../science/numeric/uncertain.ts';
import type {DiffFinding} from './facts.ts';

/** What can carry a name of its own in a profile. */
export type ThingKind = 'channel' | 'sub' | 'seat' | 'output';

/** Two names, one in each profile, that are taken for one thing, and what showed it. */
export type Match = {
	readonly kind: ThingKind;
	readonly older: string;
	readonly newer: string;
	/** Plain name in the newer profile. */
	readonly name: string;
	readonly olderName: string;
	/** Same id, same name, same data and place, or the only one left on both sides. */
	readonly by: 'id' | 'name' | 'place' | 'elimination';
};

/** Why a setting is another than before. */
export type Cause =
	| 'distance'
	| 'latency'
	| 'speed of sound'
	| 'arrival'
	| 'common offset'
	| 'receiver constant'
	| 'limits'
	| 'rounding'
	| 'level at seat'
	| 'trim in force'
	| 'master volume'
	| 'target'
	| 'weighting correction'
	| 'background correction'
	| 'meter offset'
	| 'speaker limit'
	| 'choices'
	/** What the blend of subs and mains asked for beyond distances and latencies. */
	| 'blend'
	/** Typed in or taken by choice, beyond what readings and limits ask for. */
	| 'chosen'
	| 'unexplained';

/** The share of one cause in a change, in the unit of the setting. */
export type Part = {readonly cause: Cause; readonly amount: number};

export type SettingName =
	| 'delay'
	| 'distance'
	| 'trim'
	| 'crossover'
	| 'polarity'
	| 'gain'
	| 'master volume'
	| 'LFE low-pass';

/** One setting that is not what it was. */
export type SettingChange = {
	readonly box: 'receiver' | 'processor';
	/** Channel or processor output, as the newer profile calls it; empty for a setting of the whole box. */
	readonly about: string;
	readonly name: string;
	readonly setting: SettingName;
	readonly unit: 'ms' | 'm' | 'dB' | 'Hz' | '';
	readonly before: number | string | undefined;
	readonly after: number | string | undefined;
	/** After minus before, where both are numbers. */
	readonly change?: number;
	/** Standard uncertainty of the change as computed from the readings, where known. */
	readonly sigma?: number;
	/** The parts add up to the change. Empty where the change cannot be split; `notSplit` then says why. */
	readonly parts: readonly Part[];
	readonly notSplit?: string;
	readonly weight: number;
};

/** One tape distance in both profiles. */
export type TapeChange = {
	readonly from: string;
	readonly to: string;
	readonly fromName: string;
	readonly toName: string;
	readonly before: Uncertain;
	readonly after: Uncertain;
	/** After minus before, metres. */
	readonly change: number;
	readonly sigma: number;
};

/** One field of a box, a speaker or the room that reads differently. */
export type FieldChange = {
	readonly path: string;
	readonly before: unknown;
	readonly after: unknown;
};

export type MovedChange = {
	readonly kind: 'moved';
	readonly about: string;
	readonly name: string;
	/** Largest change first. */
	readonly readings: readonly TapeChange[];
	readonly weight: number;
};

export type LevelChange = {
	readonly kind: 'level';
	readonly about: string;
	readonly name: string;
	readonly seat: string;
	readonly seatName: string;
	/** Frequency, where it was read with a tone. */
	readonly toneHertz?: number;
	/** Energy means as read, dB. */
	readonly before: Uncertain;
	readonly after: Uncertain;
	readonly change: number;
	/** The change with trim and master volume in force taken out; absent where one side does not tell them. */
	readonly withoutSettings?: number;
	readonly sigma: number;
	/** Whether two readings of one and the same thing could differ by as much. */
	readonly isScatter: boolean;
	readonly weight: number;
};

/** A dip or peak of the bass. */
export type Extreme = {readonly hertz: number; readonly aboveDb: number};

/** A figure in both profiles. */
export type BeforeAfter<Value> = {readonly before: Value; readonly after: Value};

/** What a recording says of one line at one seat, in both profiles. */
export type ResponseChange = {
	readonly kind: 'response';
	readonly about: string;
	readonly name: string;
	readonly seat: string;
	readonly seatName: string;
	/** Level in the band that the meter reads it with, after minus before and less what all lines at the seat share, dB. */
	readonly levelDb?: number;
	/** The same from 28.2 to 112.2 Hz. Only with the microphone's curve in both: a recorder may cut the bass. */
	readonly bassLevelDb?: number;
	/** Deepest dip and highest peak below 300 Hz, against the mean there; null where nothing stands out. */
	readonly dip?: BeforeAfter<Extreme | null>;
	readonly peak?: BeforeAfter<Extreme | null>;
	/** Where the curves below 300 Hz differ most, levels taken off. Only with the microphone's curve in both. */
	readonly mostChanged?: {readonly hertz: number; readonly changeDb: number};
	/** Decay in the octave at 500 Hz, seconds. */
	readonly decaySeconds?: BeforeAfter<number>;
	/** Whether two recordings of one and the same thing could differ by as much. */
	readonly isScatter: boolean;
	readonly weight: number;
};

export type Change =
	| {
			readonly kind: 'added' | 'removed';
			readonly what: ThingKind | 'receiver' | 'processor';
			readonly about: string;
			readonly name: string;
			readonly weight: number;
	  }
	| {readonly kind: 'renamed'; readonly match: Match; readonly about: string; readonly weight: number}
	| MovedChange
	| {
			readonly kind: 'tape read again';
			readonly about: string;
			readonly reading: TapeChange;
			readonly weight: number;
	  }
	| LevelChange
	| ResponseChange
	| {
			/** `replaced`: data that both profiles state differ. `stated`: data were added or taken out. */
			readonly kind: 'replaced' | 'stated';
			readonly about: string;
			readonly name: string;
			readonly fields: readonly FieldChange[];
			readonly weight: number;
	  }
	| {
			readonly kind: 'only in one';
			readonly about: string;
			readonly side: 'older' | 'newer';
			readonly readings: 'tape' | 'meter' | 'recording';
			readonly count: number;
			readonly weight: number;
	  };

export type ProfileLabel = {readonly name: string; readonly date: string; readonly room: string};

/** What differs between two profiles, larger changes first. */
export type ProfileDiff = {
	readonly older: ProfileLabel;
	readonly newer: ProfileLabel;
	/** Nothing of the room, its readings or its settings differs; name, date and notes may. */
	readonly isSame: boolean;
	readonly sameRoom: boolean;
	readonly matches: readonly Match[];
	readonly settings: readonly SettingChange[];
	readonly changes: readonly Change[];
	readonly remarks: readonly DiffFinding[];
};
