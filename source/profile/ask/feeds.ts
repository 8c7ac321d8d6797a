import type {ChannelId, Profile} from '../types.ts';
import {processorOf} from './latency.ts';
import {subsOf} from './subsOf.ts';

/** Subs by LFE channel and then by processor output; the empty name holds those connected directly. */
export function subsByFeed(profile: Profile): Map<ChannelId, Map<string, string[]>> {
	const feeds = new Map<ChannelId, Map<string, string[]>>();
	for (const sub of subsOf(profile)) {
		const byOutput = feeds.get(sub.fedBy) ?? new Map<string, string[]>();
		feeds.set(sub.fedBy, byOutput);
		const output = processorOf(profile, sub) ? sub.processorOutput! : '';
		byOutput.set(output, [...(byOutput.get(output) ?? []), sub.id]);
	}

	return feeds;
}
