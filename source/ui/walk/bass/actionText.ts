import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {formatLength} from '../../../profile/units/length.ts';
import {formatEntry} from '../../../report/entryText.ts';
import {formatDelay} from '../../../report/settingText.ts';
import type {BlendAction} from '../../../study/calibration/blend/actions.ts';
import {lengthUnitOf} from '../lengthUnits.ts';

/** One change on one box, as it is done: `receiver, Front centre: distance 2.71 m to 2.95 m`. */
export function actionText(profile: Profile, action: BlendAction): string {
	const {box, about, what, from, to, change = 0} = action;
	const name = box === 'processor' ? `bass processor, output ${about}` : `${box}, ${nameOf(profile, about)}`;
	if (what === 'polarity') return `${name}: invert the polarity`;
	const value = (amount: number) =>
		what === 'delay' ? formatDelay(rounded(amount)) : distanceText(profile, amount);
	if (from !== undefined && to !== undefined) return `${name}: ${what} ${value(from)} to ${value(to)}`;
	const size =
		what === 'delay' ? formatDelay(rounded(Math.abs(change))) : distanceText(profile, Math.abs(change));
	return `${name}: ${what} ${size} ${change < 0 ? 'less' : 'more'} than what stands`;
}

/** Steps of 0.01 ms and more: binary dust beyond is not shown. */
function rounded(milliseconds: number): number {
	return Number(milliseconds.toFixed(3));
}

function distanceText(profile: Profile, metres: number): string {
	const timing = profile.receiver?.timing;
	return timing?.kind === 'distance'
		? formatEntry(metres, timing)
		: formatLength(metres, lengthUnitOf(profile));
}
