import type {Profile} from '../../profile/types.ts';
import type {PlanScene} from '../../report/plan.ts';
import {planPoints} from '../../study/placement/planPoints.ts';
import {adjustNetwork} from '../../study/survey/adjust.ts';
import type {NetworkResult} from '../../study/survey/result.ts';
import {derived} from '../derived.ts';

/** What the places of things hang on. */
const tapedParts = ['tape', 'room', 'screen', 'seats', 'channels', 'subs', 'kit'] as const;

/** Where everything stands with what is certain of it; computed anew only when a tape reading or a thing changes. */
export const tapedNetworkOf: (profile: Profile) => NetworkResult = derived(
	{parts: (profile: Profile) => tapedParts.map(part => profile[part])},
	({parts}) =>
		adjustNetwork(Object.fromEntries(tapedParts.map((part, index) => [part, parts[index]])) as Profile),
);

/** The floor plan as far as the tape tells where things stand. */
export const sceneOf: (profile: Profile) => PlanScene = derived(
	{
		network: tapedNetworkOf,
		screen: (profile: Profile) => profile.screen,
		room: (profile: Profile) => profile.room,
	},
	({network, screen, room}) => planPoints(network, screen, room),
);
