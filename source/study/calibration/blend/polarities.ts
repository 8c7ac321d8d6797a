import {lineOf} from '../../../profile/ask/lines.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import type {Profile} from '../../../profile/types.ts';
import type {BlendWish} from './blendResult.ts';
import {type PlainPolarities, plainPolarities} from './plainPolarities.ts';

export type Polarities = PlainPolarities & {
	/** Subs whose own switch has to be turned, because no box can. */
	readonly atSubs: readonly string[];
};

/**
Polarity of every line of the subs, from the source that their delay comes from: what was verified, else distances,
which turn nothing.
*/
export function polarities(profile: Profile, wish: BlendWish | undefined): Polarities {
	if (!wish) return {...plainPolarities(profile), atSubs: []};
	const decided = standingSettings(profile);
	const feeds = new Set<string>(subsOf(profile).map(({fedBy}) => fedBy));
	const canOutputs = profile.bassProcessor?.invertsOutputs ?? false;
	const byOutput = new Map<string, boolean>();
	const byFeed = new Map<string, boolean>();
	const atSubs: string[] = [];
	for (const {id, fedBy} of subsOf(profile)) {
		const isInverted = wish.subs.get(id)?.isInverted ?? wish.inverted;
		const {output} = lineOf(profile, id);
		if (output !== undefined && canOutputs) byOutput.set(output, isInverted);
		else {
			byFeed.set(fedBy, isInverted);
			if (!profile.receiver?.invertsSubs && isInverted) atSubs.push(id);
		}
	}

	return {
		ofChannel: id =>
			feeds.has(id)
				? (byFeed.get(id) ?? (decided?.channels[id]?.polarityInverted === undefined ? undefined : false))
				: decided?.channels[id]?.polarityInverted,
		ofOutput: id =>
			byOutput.get(id) ?? (decided?.outputs?.[id]?.polarityInverted === undefined ? undefined : false),
		atSubs,
	};
}
