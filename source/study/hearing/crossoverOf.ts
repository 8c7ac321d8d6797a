import {effectOf, lineOf, orElse} from '../../profile/ask/lines.ts';
import type {SetInForce} from '../../profile/ask/settings.ts';
import {usualCrossoverHertz} from '../../profile/practice.ts';
import type {Profile} from '../../profile/types.ts';

/** Crossover of a main channel under settings, hertz; `undefined` where it plays full range. */
export function crossoverUnder(
	profile: Profile,
	set: SetInForce | undefined,
	channel: string,
): number | undefined {
	const hertz = orElse(effectOf(profile, set, lineOf(profile, channel)).crossoverHertz, usualCrossoverHertz);
	return hertz === 'full' ? undefined : hertz;
}
