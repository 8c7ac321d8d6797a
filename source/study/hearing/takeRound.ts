import type {Profile, RecordedResponse, Recording} from '../../profile/types.ts';
import type {HeardOffers} from './againstTape.ts';
import {type ProfileBlend, withFoundBlend} from './profileBlend.ts';

/** What is to be taken into a profile, responses with the digests of their content. */
export type TakenRound = {
	readonly recordings: readonly Recording[];
	readonly responses: readonly RecordedResponse[];
};

/**
A profile with recordings in it. A playing that it holds already is replaced, so that a file may be read twice.

@param blend - What all its recordings then ask for.
*/
export function withRound(
	profile: Profile,
	{recordings, responses}: TakenRound,
	blend?: ProfileBlend,
): Profile {
	if (recordings.length === 0) return profile;
	const isAnew = (old: Recording) =>
		recordings.some(
			({sha256, atSeconds, seat}) =>
				sha256 === old.sha256 && Math.abs(atSeconds - old.atSeconds) < 1 && seat === old.seat,
		);
	const old = (profile.recordings ?? []).filter(each => !isAnew(each));
	const gone = new Set((profile.recordings ?? []).filter(isAnew).map(({id}) => id));
	const heard: Profile = {
		...profile,
		recordings: [...old, ...recordings],
		responses: [
			...(profile.responses ?? []).filter(({recording}) => recording === undefined || !gone.has(recording)),
			...responses,
		],
	};
	return withFoundBlend(heard, blend);
}

/** A profile in which what lines came late by is stated as the latency of their links, added to what was stated before. */
export function withLatencies(profile: Profile, latencies: HeardOffers['latencies']): Profile {
	if (latencies.length === 0) return profile;
	return {
		...profile,
		channels: profile.channels.map(channel => {
			const heard = latencies.find(each => each.channel === channel.id);
			if (!heard) return channel;
			return {
				...channel,
				latencyMs: Number(((channel.latencyMs ?? 0) + heard.ms).toFixed(2)),
				latencyFrom: channel.latencyFrom ?? `the link of ${channel.id}, as recorded`,
			};
		}),
	};
}
