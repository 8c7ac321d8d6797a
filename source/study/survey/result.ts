import type {AssumedBy, ConventionFact, SlipCause, SurveyFinding} from './facts.ts';
import type {PointKind} from './points.ts';
import type {RoomSize} from './roomSize.ts';
import type {Vector} from './vectors.ts';

/**
- `determined`: known to 5 cm or better in every direction.
- `weak`: known to 30 cm or better.
- `undetermined`: the readings leave at least one direction open; the position is where such a thing usually stands.
- `unmeasured`: no reading touches it.
*/
export type PointStatus = 'determined' | 'weak' | 'undetermined' | 'unmeasured';

/** Standard error ellipse on the floor plan: half axes in metres, angle of the longer one from x towards y. */
export type Ellipse = {
	readonly semiMajorMetres: number;
	readonly semiMinorMetres: number;
	readonly angleDegrees: number;
};

export type PlacedPoint = {
	readonly id: string;
	readonly kind: PointKind;
	readonly label: string;
	readonly isFixed: boolean;
	/** Metres; x from the left wall, y from the front wall, z from the floor. */
	readonly at: Vector;
	/** Standard uncertainty along x, y and z, metres. */
	readonly sigmaMetres: Vector;
	/** Standard uncertainty in the direction that is known worst, metres. */
	readonly worstSigmaMetres: number;
	readonly ellipse: Ellipse;
	readonly status: PointStatus;
	/** Whether a slip of a foot in any of its readings would be noticed; never where it is not determined. */
	readonly isChecked: boolean;
	readonly assumedBy?: AssumedBy;
};

export type AdjustedReading = {
	/** Place in the profile's list of readings. */
	readonly index: number;
	readonly from: string;
	readonly to: string;
	readonly metres: number;
	readonly sigmaMetres: number;
	/** `suspect`: left out of the adjustment. `unusable`: cannot be an equation; `setAside`: by the user. */
	readonly status: 'used' | 'suspect' | 'unusable' | 'setAside';
	/** What the network says the reading should have been, metres; for suspects, without them. */
	readonly adjustedMetres?: number;
	/** Adjusted minus read, metres. */
	readonly residualMetres?: number;
	/** Share of a blunder that shows in the residual: 0 uncontrolled, 1 fully controlled. */
	readonly redundancy?: number;
	/** |v| / (σ·√r); absent where the reading is uncontrolled. */
	readonly standardisedResidual?: number;
	/** Blunder that is found with a probability of 80 %, metres. */
	readonly detectableMetres?: number;
};

export type Suspect = {
	readonly index: number;
	/** What the other readings expect, metres, and its standard uncertainty. */
	readonly expectedMetres: number;
	readonly expectedSigmaMetres: number;
	/** Read minus expected, metres. */
	readonly errorMetres: number;
	readonly standardisedResidual: number;
	/** Likeliest first; empty where nothing usual explains it. */
	readonly causes: readonly SlipCause[];
	/** Other readings that could be the wrong one instead (test statistics correlated above 0.9). */
	readonly alternatives: readonly number[];
};

export type Undetermined = {
	readonly id: string;
	readonly status: 'weak' | 'undetermined' | 'unmeasured';
	readonly assumedBy?: AssumedBy;
	/** Readings, in order, that would fix it. */
	readonly missing: ReadonlyArray<{readonly from: string; readonly to: string}>;
};

export type NetworkResult = {
	readonly points: readonly PlacedPoint[];
	readonly room: RoomSize;
	/** Standard uncertainty of width, length and height, metres; 0 where stated exactly, absent where unknown. */
	readonly roomSigmaMetres: {readonly width?: number; readonly length?: number; readonly height?: number};
	readonly readings: readonly AdjustedReading[];
	readonly suspects: readonly Suspect[];
	readonly undetermined: readonly Undetermined[];
	/** Conventions that hold what no reading ties to the walls; empty where the walls do. */
	readonly conventions: readonly ConventionFact[];
	readonly globalTest?: {
		readonly sumOfSquares: number;
		readonly degreesOfFreedom: number;
		/** Chance that random errors of the stated sigmas give as large a sum. */
		readonly probability: number;
	};
	/** Covariance of the coordinates, square metres: x, y, z of each point of `points`, then width, length, height. */
	readonly covariance: {readonly size: number; readonly values: Float64Array};
	readonly remarks: readonly SurveyFinding[];
};
