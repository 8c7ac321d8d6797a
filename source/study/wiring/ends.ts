import {channelNames} from '../../profile/channels.ts';
import type {Profile} from '../../profile/types.ts';

export type End = {readonly box: string; readonly terminal: string};

/** Splits `box/terminal`. */
export function readEnd(end: string): End {
	const slash = end.indexOf('/');
	return {box: end.slice(0, slash), terminal: end.slice(slash + 1)};
}

/**
Whether a terminal gives out a signal, takes one, or is of a box that the profile does not know.
A receiver gives to channels, a processor's outputs are named in the profile, speakers and subs only take.
*/
export function signalDirection(profile: Profile, end: string): 'gives' | 'takes' | 'unknown' {
	const {box, terminal} = readEnd(end);
	if (box === 'receiver') return profile.channels.some(({id}) => id === terminal) ? 'gives' : 'unknown';
	if (box === 'processor') {
		if (profile.bassProcessor?.outputs.includes(terminal)) return 'gives';
		return /^in\b/i.test(terminal) ? 'takes' : 'unknown';
	}

	if (profile.channels.some(({id}) => id === box)) return 'takes';
	if (profile.subs?.some(({id}) => id === box)) return 'takes';
	if (profile.wiring?.outlets?.some(({id}) => id === box)) return 'gives';
	return 'unknown';
}

/** Everything in a profile that a cable can end at, by its id. */
function boxesOf({channels, subs, wiring}: Profile): string[] {
	return [
		'receiver',
		'processor',
		...channels.map(({id}) => id),
		...(subs ?? []).map(({id}) => id),
		...(wiring?.outlets ?? []).map(({id}) => id),
		...(wiring?.equipment ?? []).map(({id}) => id),
	];
}

/** The one of some names that a text is but for capitals and blanks; the text without blanks around it where it is none. */
function writtenAlike(text: string, names: readonly string[]): string {
	const plain = text.trim().toLowerCase();
	return (
		names.find(name => name === text.trim()) ??
		names.find(name => name.toLowerCase() === plain) ??
		text.trim()
	);
}

/**
An end as the profile itself writes it: names of boxes, channels and outputs with their own capitals, other terminals in small
letters, no blanks around either. So two ways of writing one terminal are one.
*/
export function tidyEnd(profile: Profile, end: string): string {
	const {box, terminal} = readEnd(end);
	const known = writtenAlike(box, boxesOf(profile));
	if (known === 'receiver')
		return `${known}/${writtenAlike(
			terminal,
			profile.channels.map(({id}) => id),
		)}`;
	if (known === 'processor')
		return `${known}/${writtenAlike(terminal, profile.bassProcessor?.outputs ?? [])}`;
	return `${known}/${terminal.trim().toLowerCase()}`;
}

/** Whether the profile knows the box of an end, and on the receiver the channel. */
export function isKnownEnd(profile: Profile, end: string): boolean {
	const {box, terminal} = readEnd(end);
	if (!boxesOf(profile).includes(box)) return false;
	// Other sockets of a receiver have names of their own; one that is a channel's must be one of the profile's.
	return (
		box !== 'receiver' ||
		!Object.hasOwn(channelNames, terminal) ||
		profile.channels.some(({id}) => id === terminal)
	);
}
