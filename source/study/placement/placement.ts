import {referenceSeat} from '../../profile/ask/seats.ts';
import {hasProblem} from '../../profile/finding.ts';
import {layoutOf} from '../../profile/layouts.ts';
import type {Profile} from '../../profile/types.ts';
import type {NetworkResult} from '../survey/result.ts';
import {outsideBy} from '../survey/roomSize.ts';
import {aims} from './aiming.ts';
import {aheadOf, isKnown, sightlines} from './angles.ts';
import {corrections} from './corrections.ts';
import {judgeLayout} from './judge.ts';
import {placementFindings} from './placementFindings.ts';
import type {Placement} from './result.ts';
import {screenReport} from './screen.ts';
import {seatCorrection} from './seatCorrection.ts';
import {symmetry} from './symmetry.ts';

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
	const judgements = judgeLayout(
		layout,
		seen.filter(line => line.seat === seat),
		id => result.points.find(point => point.id === id)?.isChecked ?? false,
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
	return {...placement, remarks: placementFindings(result, placement)};
}

/** Whether the answer is "no": a blunder, a thing outside the room, or an angle certainly outside its range. */
export function isPlacementRefused(result: NetworkResult, placement: Placement): boolean {
	return (
		!result.readings.some(({status}) => status === 'used') ||
		hasProblem(result.remarks) ||
		placement.outside.length > 0 ||
		placement.judgements.some(({verdict, isCertain}) => verdict === 'outside' && isCertain)
	);
}
