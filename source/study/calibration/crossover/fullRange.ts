import {fullRangeLimitHertz} from '../../../profile/practice.ts';
import {type BoxData, halfPowerHz} from '../../../science/acoustics/filters/box.ts';

export type FullRangeVerdict = {readonly defensible: boolean; readonly why: string};

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
	const limit = halfPowerHz(speaker);
	if (!hasSubs) return {defensible: true, why: 'No sub: bass has nowhere else to go.'};
	if (!offered) return {defensible: false, why: 'The receiver offers no full-range setting.'};
	if (limit === undefined) return {defensible: false, why: 'The speaker’s limit is not known.'};
	const reach = `${limit.toFixed(0)} Hz (−3 dB)`;
	if (lowestSubHz !== undefined && limit <= lowestSubHz)
		return {defensible: true, why: `The speaker reaches ${reach}, as deep as the sub.`};
	return limit <= fullRangeLimitHertz
		? {
				defensible: true,
				why: `The speaker reaches ${reach}. A high-pass still spares it and lets the sub’s place smooth the bass.`,
			}
		: {defensible: false, why: `The speaker ends at ${reach}, above ${fullRangeLimitHertz} Hz.`};
}
