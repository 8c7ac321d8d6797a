import type {ChannelId} from '../../profile/channels.ts';
import type {Layout, Place, Range} from '../../profile/layouts.ts';
import {flaggedDegrees, nominalDegrees} from '../../profile/practice.ts';
import type {Uncertain} from '../../science/numeric/uncertain.ts';
import {wrapDegrees} from '../survey/directions.ts';
import type {Sightline} from './angles.ts';

/**
- `nominal`: within one degree of the nominal angle.
- `allowed`: inside the published range; without a range, within five degrees.
- `outside`: beyond the published range.
- `flagged`: no range is published, and more than five degrees off.
*/
export type Verdict = 'nominal' | 'allowed' | 'outside' | 'flagged';

export type AngleJudgement = {
	readonly what: 'azimuth' | 'elevation';
	readonly measuredDegrees: Uncertain;
	readonly nominalDegrees: number;
	readonly rangeDegrees?: Range;
	/** Measured minus nominal. */
	readonly deviationDegrees: number;
	/** How far beyond the range, or beyond five degrees; 0 inside. */
	readonly excessDegrees: number;
	readonly verdict: Verdict;
	/** Whether the verdict stands against twice the uncertainty; only then is the answer a "no". */
	readonly isCertain: boolean;
};

export type ChannelJudgement = {
	readonly id: ChannelId;
	readonly source: string;
	readonly azimuth?: AngleJudgement;
	readonly elevation: AngleJudgement;
	readonly verdict: Verdict;
	/** Of the worst part, where its readings are checked: until then a slip of a foot may be all that is wrong. */
	readonly isCertain: boolean;
	/** Whether a slip in a reading of the speaker or the seat would be noticed. */
	readonly isChecked: boolean;
};

function judgeAngle(
	what: AngleJudgement['what'],
	measured: Uncertain,
	nominal: number,
	range: Range | undefined,
): AngleJudgement {
	const deviation = wrapDegrees(measured.value - nominal);
	const [low, high] = range ? range.map(limit => limit - nominal) : [-flaggedDegrees, flaggedDegrees];
	const excess = Math.max(0, low! - deviation, deviation - high!);
	const verdict: Verdict =
		Math.abs(deviation) <= nominalDegrees
			? 'nominal'
			: excess === 0
				? 'allowed'
				: range
					? 'outside'
					: 'flagged';
	return {
		what,
		measuredDegrees: measured,
		nominalDegrees: nominal,
		...(range && {rangeDegrees: range}),
		deviationDegrees: deviation,
		excessDegrees: excess,
		verdict,
		isCertain: excess === 0 || excess > 2 * measured.sigma,
	};
}

const order: readonly Verdict[] = ['nominal', 'allowed', 'flagged', 'outside'];
const worse = (a: Verdict, b: Verdict) => (order.indexOf(a) >= order.indexOf(b) ? a : b);

/** The channel's place in a layout with the sides' signs: data hold the left one and the mirrored right one. */
export const placeOf = (layout: Layout, id: string): Place | undefined => layout.places.get(id as ChannelId);

/**
Judges every channel of a layout at the reference seat.

@param seen - Sightlines of that seat.
@param isChecked - Whether slips in the readings of a point would be noticed, by its id.
@returns One judgement for each channel that has a place in the layout and is seen.
@see ITU-R BS.775-3 figure 1; ITU-R BS.2051-1 tables of systems A to J.
*/
export function judgeLayout(
	layout: Layout,
	seen: readonly Sightline[],
	isChecked: (id: string) => boolean,
): ChannelJudgement[] {
	return seen.flatMap(({id, seat, azimuthDegrees, elevationDegrees}): ChannelJudgement[] => {
		const place = placeOf(layout, id);
		if (!place) return [];
		const elevation = judgeAngle('elevation', elevationDegrees, place.elevationDegrees, place.elevationRange);
		// Straight above, every azimuth is the same place.
		const azimuth =
			place.elevationDegrees === 90
				? undefined
				: judgeAngle('azimuth', azimuthDegrees, place.azimuthDegrees, place.azimuthRange);
		const parts = azimuth ? [azimuth, elevation] : [elevation];
		const verdict = parts.map(part => part.verdict).reduce(worse);
		const areChecked = isChecked(id) && isChecked(seat);
		return [
			{
				id: id as ChannelId,
				source: place.source,
				...(azimuth && {azimuth}),
				elevation,
				verdict,
				isCertain: areChecked && parts.filter(part => part.verdict === verdict).some(part => part.isCertain),
				isChecked: areChecked,
			},
		];
	});
}
