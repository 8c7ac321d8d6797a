import type {Profile} from '../../profile/types.ts';

/**
Mean of the tape readings between two ends, in either direction; readings put aside do not count.

@returns Metres, or undefined without a reading of more than nothing.
*/
export function tapeDistanceM(profile: Profile, one: string, other: string): number | undefined {
	const found = (profile.tape ?? []).filter(
		({from, to, setAside, metres}) =>
			!setAside && metres > 0 && ((from === one && to === other) || (from === other && to === one)),
	);
	if (found.length === 0) return undefined;
	return found.reduce((sum, {metres}) => sum + metres, 0) / found.length;
}
