import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {entryValue} from '../../../report/entryValue.ts';
import type {BlendAction} from '../../../study/calibration/blend/actions.ts';

/** One change on one box, as it is done: `receiver, Front centre: distance 2.71 m to 2.95 m`. */
export function actionText(profile: Profile, action: BlendAction): string {
	const {box, about, what, from, to, change = 0} = action;
	const name = box === 'processor' ? `bass processor, output ${about}` : `${box}, ${nameOf(profile, about)}`;
	if (what === 'polarity') return `${name}: invert the polarity`;
	const value = (amount: number) => entryValue(profile, what, amount);
	if (from !== undefined && to !== undefined) return `${name}: ${what} ${value(from)} to ${value(to)}`;
	return `${name}: ${what} ${value(Math.abs(change))} ${change < 0 ? 'less' : 'more'} than what stands`;
}
