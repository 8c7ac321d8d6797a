import type {ChannelId, Profile, Sub} from '../types.ts';
import {processorOf} from './subs.ts';

/** Where sound is late, and by how much. */
export type LatencyPart = {readonly at: string; readonly milliseconds: number};

/** Latencies in the line of a channel with a speaker of its own, ms. */
export function channelLatency(profile: Profile, id: ChannelId): LatencyPart[] {
	const channel = profile.channels.find(candidate => candidate.id === id);
	return parts([channel?.latencyFrom ?? `the link of ${id}`, channel?.latencyMs]);
}

/** Latencies in the line of a sub: the LFE output's link, the bass processor where it runs through it, its own electronics. */
export function subLatency(profile: Profile, sub: Sub): LatencyPart[] {
	const processor = processorOf(profile, sub);
	return [
		...channelLatency(profile, sub.fedBy),
		...parts([processor?.name ?? 'the bass processor', processor?.latencyMs], [sub.name, sub.latencyMs]),
	];
}

export function totalLatency(latencies: readonly LatencyPart[]): number {
	return latencies.reduce((sum, {milliseconds}) => sum + milliseconds, 0);
}

function parts(...entries: ReadonlyArray<readonly [string, number | undefined]>): LatencyPart[] {
	return entries.flatMap(([at, milliseconds]) => (milliseconds ? [{at, milliseconds}] : []));
}
