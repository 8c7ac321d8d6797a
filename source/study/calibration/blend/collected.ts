import type {SetInForce} from '../../../profile/ask/settings.ts';
import type {NoiseReading} from './noise.ts';
import type {OffsetTolerances, SubsOffset} from './offset.ts';
import type {PairTrial} from './pair/pairTrial.ts';
import type {Relation, SubLine, SubsState} from './subsState.ts';
import type {SumReading} from './toneSum.ts';

/** A front speaker with a crossover, and its tones. */
export type Front = {readonly id: string; readonly crossoverHertz: number; readonly tones: readonly number[]};

export type Collected = {
	readonly fronts: readonly Front[];
	readonly centre: string | undefined;
	readonly subs: readonly string[];
	/** Of the fronts together, hertz. */
	readonly crossoverHertz: number;
	readonly periodMs: number;
	/** The set that stands in the boxes, and what it makes of the subs. */
	readonly set: SetInForce | undefined;
	readonly state: SubsState;
	readonly stands: SubsOffset;
	/** Whether distances tell how the subs should stand to each other; else the set does. */
	readonly isPlaced: boolean;
	/** How the subs should stand to each other. */
	readonly relation: Relation;
	/** What distances and the room's wiring give without any blend. */
	readonly plain: SubsOffset;
	readonly lines: readonly SubLine[];
	/** What was read of the subs against each other, and the change between them that was kept. */
	readonly pair: {
		readonly tones: ReadonlyMap<number, readonly SumReading[]>;
		readonly trials: readonly PairTrial[];
		readonly kept: PairTrial | undefined;
	};
	readonly tolerances: OffsetTolerances;
	/** By front, then by tone in hertz. */
	readonly sums: ReadonlyMap<string, ReadonlyMap<number, readonly SumReading[]>>;
	/** With the subs as they should stand to each other, to verify a delay of all of them. */
	readonly noise: readonly NoiseReading[];
	/** All of it, to judge a change between subs. */
	readonly pairNoise: readonly NoiseReading[];
	/** Places of readings that do not count: subs stood otherwise to each other; tones with another crossover or balance; in the background. */
	readonly otherRelation: readonly number[];
	readonly otherSettings: readonly number[];
	readonly drowned: readonly number[];
	/** Places of tones of a front with some subs only, or with some of them turned. */
	readonly partly: readonly number[];
};
