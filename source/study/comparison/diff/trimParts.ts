import {partsOf, type RoundingSide, roundingOf} from './parts.ts';
import type {Part} from './profileDiff.ts';

/** Everything that one trim of one profile was computed from, all in decibels. */
export type TrimSide = RoundingSide & {
	/** As it stands in the box. */
	readonly dialled: number;
	/** Level as computed with: read, plus the three corrections. */
	readonly levelDb: number;
	readonly backgroundCorrectionDb: number;
	readonly weightingCorrectionDb: number;
	readonly meterOffsetDb: number;
	readonly trimInForceDb: number;
	readonly masterVolumeDb: number;
	/** Target of this channel, subs' offset included. */
	readonly targetDb: number;
	/** What exact trims of all channels have in common beyond the law: see `trimOffset`. */
	readonly sharedOffset: number;
};

/** What the exact trim holds beyond trim in force + target − level. */
export function trimOffset(side: Pick<TrimSide, 'exact' | 'trimInForceDb' | 'targetDb' | 'levelDb'>): number {
	return side.exact - (side.trimInForceDb + side.targetDb - side.levelDb);
}

/**
Why a trim is another than before, split exactly.

The level at the seat is what the meter showed, less the master volume in force; the louder a channel, the smaller its
trim, so each correction counts with a minus sign.

@returns Parts in decibels; they add up to `after.dialled − before.dialled`.
*/
export function trimParts(before: TrimSide, after: TrimSide): Part[] {
	const asRead = (side: TrimSide) =>
		side.levelDb -
		side.backgroundCorrectionDb -
		side.weightingCorrectionDb -
		side.meterOffsetDb -
		side.masterVolumeDb;
	const change = (value: (side: TrimSide) => number) => value(after) - value(before);
	return partsOf([
		['level at seat', -change(asRead)],
		['trim in force', change(side => side.trimInForceDb)],
		['master volume', -change(side => side.masterVolumeDb)],
		['target', change(side => side.targetDb)],
		['weighting correction', -change(side => side.weightingCorrectionDb)],
		['background correction', -change(side => side.backgroundCorrectionDb)],
		['meter offset', -change(side => side.meterOffsetDb)],
		['common offset', change(side => side.sharedOffset + side.sharedShift)],
		['limits', change(side => roundingOf(side).limits)],
		['rounding', change(side => roundingOf(side).rounding)],
		['chosen', change(side => side.dialled - side.stepped)],
		['unexplained', change(side => trimOffset(side) - side.sharedOffset)],
	]);
}
