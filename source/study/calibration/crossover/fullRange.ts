import {finding} from '../../../profile/finding.ts';
import {fullRangeLimitHertz} from '../../../profile/practice.ts';
import {type BoxData, halfPowerHz} from '../../../science/acoustics/filters/box.ts';
import type {FullRangeVerdict} from './result.ts';

/**
Whether a speaker may be left without a high-pass, and why.

@param speaker - What is known of its low end.
@param lowestSubHz - Half-power limit of the deepest sub, where known.
@param hasSubs - Whether there is any sub.
@param offered - Whether the receiver has such a setting.
*/
export function judgeFullRange(
	speaker: BoxData,
	lowestSubHz: number | undefined,
	hasSubs: boolean,
	offered: boolean,
): FullRangeVerdict {
	const limitHertz = halfPowerHz(speaker);
	const verdict = (defensible: boolean, why: FullRangeVerdict['why']) => ({defensible, why});
	if (!hasSubs) return verdict(true, finding('note', 'no-sub', []));
	if (!offered) return verdict(false, finding('note', 'full-range-not-offered', []));
	if (limitHertz === undefined) return verdict(false, finding('note', 'limit-not-known', []));
	if (lowestSubHz !== undefined && limitHertz <= lowestSubHz)
		return verdict(true, finding('note', 'as-deep-as-sub', [], {limitHertz}));
	if (limitHertz <= fullRangeLimitHertz)
		return verdict(true, finding('note', 'deep-enough', [], {limitHertz}));
	const facts = {limitHertz, neededHertz: fullRangeLimitHertz};
	return verdict(false, finding('note', 'not-deep-enough', [], facts));
}
