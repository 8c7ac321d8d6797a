import {inputsHash} from '../../../profile/ask/digest.ts';
import type {Profile, SettingsSet} from '../../../profile/types.ts';
import {toSettingsSet} from '../../../study/calibration/toSettingsSet.ts';
import {solutionOf} from '../solution.ts';

/** The settings that the readings give now, as a set that no profile holds yet. */
export function freshSet(profile: Profile, decidedAt?: string): SettingsSet {
	return toSettingsSet(solutionOf(profile), {
		id: 'fresh',
		inputsHash: inputsHash(profile),
		...(decidedAt === undefined ? {} : {decidedAt}),
	});
}
