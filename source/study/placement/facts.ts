import type {FindingOf, NoFacts} from '../../profile/finding.ts';
import type {Range} from '../../profile/layouts.ts';
import type {Difference} from './symmetry.ts';
import type {TapeMove} from './way.ts';

/** One angle beyond its range, or, where none is published, too far from its nominal value. */
export type AngleOff = {
	readonly what: 'azimuth' | 'elevation';
	readonly measuredDegrees: number;
	/** How far beyond the range, or beyond what is flagged where no range is published. */
	readonly excessDegrees: number;
	readonly rangeDegrees?: Range;
	readonly nominalDegrees: number;
	readonly flaggedDegrees: number;
};

type OffAngles = {
	readonly angles: readonly AngleOff[];
	/** The publication whose range it is. */
	readonly source: string;
	/** Whether the tape is sure enough of it, and checked. */
	readonly isCertain: boolean;
	readonly isChecked: boolean;
	/** The smallest move that brings it right, or why there is none. */
	readonly remedy: TapeMove | 'fixed' | 'tilt' | 'none';
	/** Whether the move is to be made overhead. */
	readonly isHigh: boolean;
};

type Uneven = Pick<Difference, 'what' | 'unit'> & {
	/** Size of the difference between left and right, in its unit. */
	readonly size: number;
};

/** What findings on the placement are said with. */
export type PlacementFacts = {
	'outside-room': NoFacts;
	'angle-outside': OffAngles;
	'angle-flagged': OffAngles;
	'seat-instead': {readonly way: TapeMove};
	'pair-uneven': {
		readonly differences: readonly Uneven[];
		/** The move of one of them, or the speaker that is to be brought into its range first. */
		readonly remedy: TapeMove | {readonly first: string} | 'none';
	};
	'pair-distance': {readonly differences: readonly Uneven[]};
	'screen-off-normal': {readonly offNormalDegrees: number; readonly limitDegrees: number};
	'centre-height': {readonly apartDegrees: number};
};

export type PlacementFinding = FindingOf<PlacementFacts>;
