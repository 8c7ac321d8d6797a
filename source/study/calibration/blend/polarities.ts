import {lineOf} from '../../../profile/ask/lines.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import type {ChannelId, Profile, SettingsSet} from '../../../profile/types.ts';
import type {BlendWish} from './blendResult.ts';

export type Polarities = {
	/** Of a channel of the receiver; absent where nothing says. */
	readonly ofChannel: (id: ChannelId) => boolean | undefined;
	/** Of an output of the bass processor. */
	readonly ofOutput: (id: string) => boolean | undefined;
	/** Subs whose own switch has to be turned, because no box can. */
	readonly atSubs: readonly string[];
};

/**
Polarity of every line of the subs, from the source that their delay comes from: what was verified, else distances,
which turn nothing. A set that was computed here never lends its polarity to a new delay; one found in the boxes or
typed in by hand tells how the room is wired, and stays.
*/
export function polarities(profile: Profile, wish: BlendWish | undefined): Polarities {
	const decided = standingSettings(profile);
	const found = profile.settings?.findLast(({origin}) => origin !== 'solved');
	const feeds = new Set<string>(subsOf(profile).map(({fedBy}) => fedBy));
	const statedOf = (in_: (set: SettingsSet | undefined) => boolean | undefined) => {
		const stated = in_(found) ?? in_(decided);
		// What a computed set turned is turned back in words, so that it is typed in.
		return in_(found) === undefined && stated ? false : stated;
	};
	const channelIn = (id: ChannelId) => (set: SettingsSet | undefined) => set?.channels[id]?.polarityInverted;
	const outputIn = (id: string) => (set: SettingsSet | undefined) => set?.outputs?.[id]?.polarityInverted;
	if (!wish) {
		return {
			ofChannel: id => (feeds.has(id) ? statedOf(channelIn(id)) : channelIn(id)(decided)),
			ofOutput: id => statedOf(outputIn(id)),
			atSubs: [],
		};
	}

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
				? (byFeed.get(id) ?? (channelIn(id)(decided) === undefined ? undefined : false))
				: channelIn(id)(decided),
		ofOutput: id => byOutput.get(id) ?? (outputIn(id)(decided) === undefined ? undefined : false),
		atSubs,
	};
}
