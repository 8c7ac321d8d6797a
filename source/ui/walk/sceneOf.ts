import type {Profile} from '../../profile/types.ts';
import type {PlanScene} from '../../report/plan.ts';
import {planPoints} from '../../study/placement/planPoints.ts';
import {adjustNetwork} from '../../study/survey/adjust.ts';

/** What the places of things hang on. */
const parts = ['tape', 'room', 'screen', 'seats', 'channels', 'subs', 'kit'] as const;

let latest: {readonly profile: Profile; readonly scene: PlanScene} | undefined;

/** Where everything stands as far as the tape tells; computed anew only when a tape reading or a thing changes. */
export function sceneOf(profile: Profile): PlanScene {
	const isSame = latest && parts.every(part => latest!.profile[part] === profile[part]);
	if (!latest || !isSame) {
		latest = {profile, scene: planPoints(adjustNetwork(profile), profile.screen)};
	}

	return latest.scene;
}
