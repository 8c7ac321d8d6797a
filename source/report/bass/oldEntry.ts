import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import type {BlendAction} from '../../study/calibration/blend/actions.ts';
import {entryValue} from '../entryValue.ts';
import {wrap} from '../wrap.ts';

/** What stood before a change, to be typed in again: the box's line and its value. */
export function oldEntry(
	profile: Profile,
	{box, about, what, from}: Pick<BlendAction, 'box' | 'about' | 'what' | 'from'>,
): {readonly name: string; readonly value: string} {
	const line = box === 'processor' ? `bass processor, output ${about}` : `${box}, ${nameOf(profile, about)}`;
	const name = `${line}: ${what}`;
	if (what === 'polarity' || from === undefined) return {name, value: 'as before'};
	return {name, value: entryValue(profile, what, from)};
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
