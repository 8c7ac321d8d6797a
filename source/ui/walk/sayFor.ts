import type {Profile} from '../../profile/types.ts';
import {type Say, sayIn} from '../../report/said/say.ts';
import {lengthUnitOf} from './lengthUnits.ts';

/** How the walk says sentences: lengths in the profile's own unit. */
export function sayFor(profile: Profile): Say {
	return sayIn(profile, lengthUnitOf(profile));
}
