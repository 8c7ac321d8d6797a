import type {Profile} from '../profile/types.ts';
import {type Parts, partsWith} from '../study/calibration/parts.ts';
import {adjustNetwork} from '../study/survey/adjust.ts';

/** The costly parts of a profile, computed afresh, since a command asks once. The app keeps its own. */
export function costlyPartsOf(profile: Profile): Parts {
	return partsWith(profile, adjustNetwork(profile));
}
