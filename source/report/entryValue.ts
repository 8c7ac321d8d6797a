import type {Profile} from '../profile/types.ts';
import {formatLength} from '../profile/units/length.ts';
import {formatEntry} from './entryText.ts';
import {formatDelay} from './settingText.ts';

/** A delay, ms, or a distance, metres, as its box shows it: a distance in the receiver's own unit and steps. */
export function entryValue(
	{receiver, lengthUnit = 'm'}: Pick<Profile, 'receiver' | 'lengthUnit'>,
	what: 'delay' | 'distance',
	amount: number,
): string {
	// Steps of 0.01 ms and more: binary dust beyond is not shown.
	if (what === 'delay') return formatDelay(Number(amount.toFixed(3)));
	const timing = receiver?.timing;
	return timing?.kind === 'distance' ? formatEntry(amount, timing) : formatLength(amount, lengthUnit);
}
