import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import type {Remark} from '../calibration/result.ts';
import {lengthText} from '../survey/names.ts';
import type {NetworkResult} from '../survey/result.ts';
import {correctionText} from './correctionText.ts';
import type {AngleJudgement, ChannelJudgement} from './judge.ts';
import {pairCorrection} from './pairCorrection.ts';
import type {Placement} from './placement.ts';
import {offNormalLimitDegrees} from './screen.ts';

const angle = (degrees: number) => `${formatNumber(degrees, 0)}°`;

function angleText({
	what,
	measuredDegrees,
	excessDegrees,
	rangeDegrees,
	nominalDegrees,
}: AngleJudgement): string {
	const limits = rangeDegrees
		? `range ${angle(rangeDegrees[0])} to ${angle(rangeDegrees[1])}`
		: `${angle(nominalDegrees)} with no published range`;
	const excess = excessDegrees < 1 ? `${excessDegrees.toFixed(1)}°` : angle(excessDegrees);
	return rangeDegrees
		? `${what} ${angle(measuredDegrees.value)}, ${excess} outside the ${limits}`
		: `${what} ${angle(measuredDegrees.value)}, more than 5° from ${limits}`;
}

function judgementRemark(
	profile: Profile,
	result: NetworkResult,
	judgement: ChannelJudgement,
	placement: Omit<Placement, 'remarks'>,
): Remark[] {
	const off = [judgement.azimuth, judgement.elevation].filter(
		part => part && part.excessDegrees > 0,
	) as AngleJudgement[];
	if (off.length === 0) return [];
	const ways = placement.corrections.filter(({id}) => id === judgement.id);
	const point = result.points.find(({id}) => id === judgement.id)!;
	const name = nameOf(profile, judgement.id);
	const fix = ways[0]
		? ` ${correctionText(profile, result, ways[0])
				.slice(name.length + 2)
				.replace(/^./, first => first.toUpperCase())}.`
		: point.isFixed
			? ' It cannot be moved; only moving the seat changes it.'
			: judgement.id === 'FC'
				? ' Tilt it at the ear; a place that is right would be outside the room or before the picture.'
				: ' No place in reach inside the room brings it right.';
	const isHigh = point.at[2] > 1.8;
	const caution =
		isHigh && ways[0]
			? ' Overhead: a steady ladder, a second person, fixings as the maker and local codes ask.'
			: '';
	const doubt = judgement.isCertain ? '' : ' The tape is too uncertain here to be sure.';
	return [
		{
			kind: judgement.verdict === 'outside' && judgement.isCertain ? 'problem' : 'advice',
			code: judgement.verdict === 'outside' ? 'angle-outside' : 'angle-flagged',
			about: judgement.id,
			text: `${name}: ${off.map(angleText).join('; ')} (${judgement.source}).${doubt}${fix}${caution}`,
		},
	];
}

function symmetryRemarks(
	profile: Profile,
	result: NetworkResult,
	{symmetry, seat}: Omit<Placement, 'remarks'>,
): Remark[] {
	return symmetry.flatMap((pair): Remark[] => {
		const {left, right, differences} = pair;
		const shown = differences.filter(({repair}) => repair !== 'nothing needed');
		const only = (repair: string) =>
			shown
				.filter(difference => difference.repair === repair)
				.map(({what, difference, unit}) => {
					const size = Math.abs(difference.value);
					return `${what} by ${unit === 'degrees' ? angle(size) : lengthText(profile, size)}`;
				})
				.join(', ');
		const names = `${nameOf(profile, left)} and right`;
		const moving = only('only moving');
		const settings = only('delays and trims');
		const move = pairCorrection(result, pair, seat);
		const remedy = move
			? `Delays do not repair that. ${correctionText(profile, result, move)}.`
			: 'Only moving one of them repairs that.';
		return [
			...(moving
				? [
						{
							kind: 'advice',
							code: 'pair-uneven',
							about: left,
							text: `${names} differ in ${moving}. ${remedy}`,
						} as const,
					]
				: []),
			...(settings
				? [
						{
							kind: 'note',
							code: 'pair-distance',
							about: right,
							text: `${names} differ in ${settings}. Delays and trims take care of that.`,
						} as const,
					]
				: []),
		];
	});
}

/** What is to be said about a placement, problems first. */
export function placementRemarks(
	profile: Profile,
	result: NetworkResult,
	placement: Omit<Placement, 'remarks'>,
): Remark[] {
	const seats = placement.screen?.seats ?? [];
	const centre = placement.screen?.centre;
	const seatMove = placement.seatMove;
	const all = [
		...placement.outside.map(
			(id): Remark => ({
				kind: 'problem',
				code: 'outside-room',
				about: id,
				text: `${nameOf(profile, id)}: this place is outside the room.`,
			}),
		),
		...placement.judgements.flatMap(judgement => judgementRemark(profile, result, judgement, placement)),
		...(seatMove
			? [
					{
						kind: 'advice',
						code: 'seat-instead',
						about: placement.seat,
						text: `Both fronts are off in the same sense. Or leave them and move the seat: ${correctionText(profile, result, seatMove)}; look with --move what that does to the others.`,
					} as const,
				]
			: []),
		...symmetryRemarks(profile, result, placement),
		...seats
			.filter(({offNormalDegrees}) => offNormalDegrees > offNormalLimitDegrees)
			.map(
				({seat, offNormalDegrees}): Remark => ({
					kind: 'note',
					code: 'screen-off-normal',
					about: seat,
					text: `${nameOf(profile, seat)} is ${angle(offNormalDegrees)} off the screen’s middle line; a review room keeps within ${offNormalLimitDegrees}° (SMPTE 196M-2003).`,
				}),
			),
		...(centre && Math.abs(centre.apartDegrees) > 10
			? [
					{
						kind: 'advice',
						code: 'centre-height',
						about: 'FC',
						text: `Front centre sounds ${angle(Math.abs(centre.apartDegrees))} ${centre.apartDegrees < 0 ? 'below' : 'above'} the picture’s middle. Nearer to the picture, tilted at the ear, is better (common practice, no source).`,
					} as const,
				]
			: []),
	];
	const rank = {problem: 0, doubt: 1, advice: 2, note: 3} as const;
	return all.sort((a, b) => rank[a.kind] - rank[b.kind]);
}
