import type {Profile} from '../../profile/types.ts';
import {diffProfiles} from '../../study/comparison/diff/diffProfiles.ts';
import {comparePlans} from '../../study/placement/comparePlans.ts';
import {derived} from '../derived.ts';
import {tapedNetworkOf} from '../walk/sceneOf.ts';
import {solutionOf} from '../walk/solution.ts';

/** What differs between two profiles, and their floor plans side by side. */
export function comparedPlans(older: Profile, newer: Profile): ReturnType<typeof made> {
	return madeOf(newer)(older);
}

/** By the newer profile, what is found for an older one. A key that scrolls asks anew; adjusting both networks takes longer than a frame. */
const madeOf = derived({newer: (newer: Profile) => newer}, ({newer}) =>
	derived({older: (older: Profile) => older}, ({older}) => made(older, newer)),
);

function made(older: Profile, newer: Profile) {
	const solved = (profile: Profile) => ({profile, solution: solutionOf(profile)});
	const diff = diffProfiles(solved(older), solved(newer));
	const surveyed = (profile: Profile) => ({network: tapedNetworkOf(profile), screen: profile.screen});
	return {diff, plans: comparePlans(surveyed(older), surveyed(newer), diff)};
}
