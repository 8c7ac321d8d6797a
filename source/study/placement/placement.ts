import {referenceSeat} from '../../profile/ask/seats.ts';
import {layoutOf} from '../../profile/layouts.ts';
import type {Profile} from '../../profile/types.ts';
import type {Remark} from '../calibration/result.ts';
import type {NetworkResult} from '../survey/result.ts';
import {outsideBy} from '../survey/roomSize.ts';
import {type Aim, aims} from './aiming.ts';
import {aheadOf, isKnown, type Sightline, sightlines} from './angles.ts';
import {type Correction, corrections} from './corrections.ts';
import {type ChannelJudgement, judge} from './judge.ts';
import {placementRemarks} from './placementRemarks.ts';
import {type ScreenReport, screenReport} from './screen.ts';
import {seatCorrection} from './seatCorrection.ts';
import {type PairSymmetry, symmetry} from './symmetry.ts';

export type Placement = {
	readonly seat: string;
	readonly layout: string;
	/** What azimuth 0° is. */
	readonly ahead: string;
	/** For every seat whose place is known. */
	readonly sightlines: readonly Sightline[];
	readonly judgements: readonly ChannelJudgement[];
	readonly symmetry: readonly PairSymmetry[];
	readonly corrections: readonly Correction[];
	/** One move of the seat that brings both fronts right, where both are off in the same sense. */
	readonly seatMove?: Correction;
	readonly aims: readonly Aim[];
	readonly screen?: ScreenReport;
	/** Ids of things that a what-if put outside the room. */
	readonly outside: readonly string[];
	readonly remarks: readonly Remark[];
};

/** Farther out than this is no matter of how the tape was held, metres. */
const outsideMetres = 0.05;

/**
Judges the placement of an adjusted network: angles at every seat, the layout's ranges at the reference seat, left and
right, corrections, aiming and screen.
*/
export function judgePlacement(profile: Profile, result: NetworkResult): Placement {
	const seat = referenceSeat(profile).id;
	const layout = layoutOf(profile.channels.map(({id}) => id));
	const seen = result.points.filter(({kind}) => kind === 'seat').flatMap(({id}) => sightlines(result, id));
	const judgements = judge(
		layout,
		seen.filter(line => line.seat === seat),
	);
	const screen = screenReport(profile, result);
	const seatMove = seatCorrection(result, judgements, seat);
	const placement = {
		seat,
		layout: layout.name,
		ahead: aheadOf(result).what,
		sightlines: seen,
		judgements,
		symmetry: symmetry(result, seat),
		corrections: judgements.flatMap(judgement => corrections(result, judgement, seat, profile.screen)),
		...(seatMove && {seatMove}),
		aims: aims(result, seat),
		...(screen && {screen}),
		outside: result.points
			.filter(point => isKnown(point) && result.conventions.length === 0)
			.filter(({at}) => outsideBy(result.room, at) > outsideMetres)
			.map(({id}) => id),
	};
	return {...placement, remarks: placementRemarks(profile, result, placement)};
}

/** Whether the answer is "no": a blunder, a thing outside the room, or an angle certainly outside its range. */
export function isPlacementRefused(result: NetworkResult, placement: Placement): boolean {
	return (
		!result.readings.some(({status}) => status === 'used') ||
		result.remarks.some(({kind}) => kind === 'problem') ||
		placement.outside.length > 0 ||
		placement.judgements.some(({verdict, isCertain}) => verdict === 'outside' && isCertain)
	);
}
