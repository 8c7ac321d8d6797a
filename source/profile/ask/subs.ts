import {isLfe} from '../channels.ts';
import type {ChannelId, Profile, Sub} from '../types.ts';

/** What the subs of a profile follow from. */
export type WithSubs = Pick<Profile, 'subs' | 'channels'>;

/**
The subs of a profile. An LFE channel that names no sub drives one all the same: it counts as a sub of the channel's own name.
*/
export function subsOf({subs = [], channels}: WithSubs): readonly Sub[] {
	// Asked for at every reading: without an LFE channel of its own kind nothing is made.
	let implied: Sub[] | undefined;
	for (const {id} of channels) {
		if (!isLfe(id) || subs.some(({fedBy}) => fedBy === id)) continue;
		implied ??= [];
		implied.push({id, name: `Sub on ${id}`, fedBy: id});
	}

	return implied ? [...subs, ...implied] : subs;
}

/** The bass processor, where the sub hangs on one of its outputs. */
export function processorOf(
	{bassProcessor}: Pick<Profile, 'bassProcessor'>,
	{processorOutput}: Pick<Sub, 'processorOutput'>,
): Profile['bassProcessor'] {
	return processorOutput !== undefined && bassProcessor?.outputs.includes(processorOutput)
		? bassProcessor
		: undefined;
}

/** Subs by LFE channel and then by processor output; the empty name holds those connected directly. */
export function subsByFeed(
	profile: WithSubs & Pick<Profile, 'bassProcessor'>,
): Map<ChannelId, Map<string, string[]>> {
	const feeds = new Map<ChannelId, Map<string, string[]>>();
	for (const sub of subsOf(profile)) {
		const byOutput = feeds.get(sub.fedBy) ?? new Map<string, string[]>();
		feeds.set(sub.fedBy, byOutput);
		const output = processorOf(profile, sub) ? sub.processorOutput! : '';
		byOutput.set(output, [...(byOutput.get(output) ?? []), sub.id]);
	}

	return feeds;
}
