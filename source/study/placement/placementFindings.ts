import {finding, mostSeriousFirst} from '../../profile/finding.ts';
import {centreApartDegrees, flaggedDegrees, ladderMetres} from '../../profile/practice.ts';
import type {NetworkResult} from '../survey/result.ts';
import type {AngleOff, PlacementFinding} from './facts.ts';
import type {AngleJudgement, ChannelJudgement} from './judge.ts';
import {pairCorrection} from './pairCorrection.ts';
import type {Placement} from './result.ts';
import {offNormalLimitDegrees} from './screen.ts';
import type {PairSymmetry, Repair} from './symmetry.ts';
import {wayOf} from './way.ts';

type WithoutRemarks = Omit<Placement, 'remarks'>;

function angleOff({
	what,
	measuredDegrees,
	excessDegrees,
	rangeDegrees,
	nominalDegrees,
}: AngleJudgement): AngleOff {
	return {
		what,
		measuredDegrees: measuredDegrees.value,
		excessDegrees,
		...(rangeDegrees && {rangeDegrees}),
		nominalDegrees,
		flaggedDegrees,
	};
}

function judgementFindings(
	result: NetworkResult,
	judgement: ChannelJudgement,
	{corrections, seat}: WithoutRemarks,
): PlacementFinding[] {
	const {id, source, isCertain, isChecked, verdict} = judgement;
	const off = [judgement.azimuth, judgement.elevation]
		.filter(part => part !== undefined)
		.filter(({excessDegrees}) => excessDegrees > 0);
	if (off.length === 0) return [];
	const way = corrections.find(correction => correction.id === id);
	const point = result.points.find(each => each.id === id)!;
	const facts = {
		angles: off.map(angleOff),
		source,
		isCertain,
		isChecked,
		remedy: way
			? wayOf(result, way, seat)
			: point.isFixed
				? ('fixed' as const)
				: id === 'FC'
					? ('tilt' as const)
					: ('none' as const),
		isHigh: point.at[2] > ladderMetres,
	};
	const kind = verdict === 'outside' && isCertain ? 'problem' : 'advice';
	return [finding(kind, verdict === 'outside' ? 'angle-outside' : 'angle-flagged', [id], facts)];
}

function pairFindings(result: NetworkResult, pair: PairSymmetry, judged: WithoutRemarks): PlacementFinding[] {
	const about = [pair.left, pair.right];
	const by = (wanted: Repair) =>
		pair.differences
			.filter(({repair}) => repair === wanted)
			.map(({what, difference, unit}) => ({what, unit, size: Math.abs(difference.value)}));
	const moving = by('only moving');
	const settings = by('delays and trims');
	return [
		...(moving.length > 0
			? [
					finding('advice', 'pair-uneven', about, {
						differences: moving,
						remedy: pairRemedy(result, pair, judged),
					}),
				]
			: []),
		...(settings.length > 0 ? [finding('note', 'pair-distance', about, {differences: settings})] : []),
	];
}

/** One correction a speaker: where one of the pair is out of its range, that comes first and the pair waits. */
function pairRemedy(result: NetworkResult, pair: PairSymmetry, {corrections, seat}: WithoutRemarks) {
	const first = corrections.find(({id}) => id === pair.left || id === pair.right);
	if (first) return {first: first.id};
	const move = pairCorrection(result, pair, seat);
	return move ? wayOf(result, move, seat) : ('none' as const);
}

/** What is to be said about a placement, problems first. */
export function placementFindings(result: NetworkResult, judged: WithoutRemarks): PlacementFinding[] {
	const {seatMove, seat, screen} = judged;
	const apartDegrees = screen?.centre?.apartDegrees;
	const all: PlacementFinding[] = [
		...judged.outside.map(id => finding('problem', 'outside-room', [id])),
		...judged.judgements.flatMap(judgement => judgementFindings(result, judgement, judged)),
		...(seatMove ? [finding('advice', 'seat-instead', [seat], {way: wayOf(result, seatMove, seat)})] : []),
		...judged.symmetry.flatMap(pair => pairFindings(result, pair, judged)),
		...(screen?.seats ?? [])
			.filter(({offNormalDegrees}) => offNormalDegrees > offNormalLimitDegrees)
			.map(({seat: id, offNormalDegrees}) =>
				finding('note', 'screen-off-normal', [id], {offNormalDegrees, limitDegrees: offNormalLimitDegrees}),
			),
		...(apartDegrees !== undefined && Math.abs(apartDegrees) > centreApartDegrees
			? [finding('advice', 'centre-height', ['FC'], {apartDegrees})]
			: []),
	];
	return mostSeriousFirst(all);
}
