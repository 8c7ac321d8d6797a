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
