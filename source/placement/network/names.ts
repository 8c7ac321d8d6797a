import {type ChannelId, channelNames} from '../../profile/channels.ts';
import type {Profile, TapeReading} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';

const planeNames: Readonly<Record<string, string>> = {
	'wall:left': 'left wall',
	'wall:right': 'right wall',
	'wall:front': 'front wall',
	'wall:back': 'back wall',
	floor: 'floor',
	ceiling: 'ceiling',
	screen: 'screen',
};

/** The plain name of an end of the tape, without an article. */
export function endName(profile: Profile, end: string): string {
	const plane = Object.hasOwn(planeNames, end) ? planeNames[end] : undefined;
	if (plane) return plane;
	const seat = profile.seats.find(({id}) => id === end);
	const sub = profile.subs?.find(({id}) => id === end);
	return seat?.name ?? sub?.name ?? (Object.hasOwn(channelNames, end) ? channelNames[end as ChannelId] : end);
}

/** A length in the profile's own unit. */
export function lengthText(profile: Profile, metres: number, stepMetres?: number): string {
	return formatLength(metres, profile.lengthUnit ?? 'm', stepMetres === undefined ? {} : {stepMetres});
}

/** Two ends, such as "Front left to left wall". */
export function endsText(profile: Profile, {from, to}: {readonly from: string; readonly to: string}): string {
	return `${endName(profile, from)} to ${endName(profile, to)}`;
}

/** A reading with its value, such as "Front left to left wall, 0.92 m". */
export function readingText(profile: Profile, reading: TapeReading): string {
	return `${endsText(profile, reading)}, ${lengthText(profile, reading.metres)}`;
}

/** Words as a list: "a, b and c". */
export const listText = (words: readonly string[]) =>
	words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
