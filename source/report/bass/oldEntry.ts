import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {BlendAction} from '../../study/calibration/blend/actions.ts';
import {formatEntry} from '../entryText.ts';
import {formatDelay} from '../settingText.ts';
import {wrap} from '../wrap.ts';

/** What stood before a change, to be typed in again: the box's line and its value. */
export function oldEntry(
	profile: Profile,
	{box, about, what, from}: Pick<BlendAction, 'box' | 'about' | 'what' | 'from'>,
): {readonly name: string; readonly value: string} {
	const line = box === 'processor' ? `bass processor, output ${about}` : `${box}, ${nameOf(profile, about)}`;
	const name = `${line}: ${what}`;
	if (what === 'polarity' || from === undefined) return {name, value: 'as before'};
	const timing = profile.receiver?.timing;
	if (what === 'delay') return {name, value: formatDelay(Number(from.toFixed(3)))};
	return {
		name,
		value:
			timing?.kind === 'distance' ? formatEntry(from, timing) : formatLength(from, profile.lengthUnit ?? 'm'),
	};
}

/** All that a change moved from, a line each, under its heading; nothing where nothing was changed. */
export function oldEntryTexts(
	profile: Profile,
	actions: ReadonlyArray<Parameters<typeof oldEntry>[1]>,
	width: number,
): string[] {
	if (actions.length === 0) return [];
	const lines = actions.map(action => oldEntry(profile, action));
	return [
		'Type the old entries in again:',
		...lines.flatMap(({name, value}) => wrap(`${name} ${value}`, width, '> ')),
	];
}
