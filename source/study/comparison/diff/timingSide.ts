import {receiverSpeed} from '../../../profile/ask/boxes.ts';
import {settingFor} from '../../../profile/ask/settings.ts';
import {isLfe} from '../../../profile/channels.ts';
import type {Profile, SettingsSet} from '../../../profile/types.ts';
import {median} from '../../../science/numeric/statistics.ts';
import type {ChannelSolution, Solution} from '../../calibration/result.ts';
import {type TimingSide, timingOffset} from './timingParts.ts';

/** What the set holds for a channel's timing, in the kind of entry that the receiver takes. */
export function dialledTiming(
	profile: Profile,
	set: SettingsSet | undefined,
	id: string,
): number | undefined {
	const channel = settingFor(set, id);
	return profile.receiver?.timing.kind === 'distance'
		? channel?.distanceMetres?.stepped
		: channel?.delayMs?.stepped;
}

/**
Arrival behind one channel of the receiver, ms, and the distance that it comes from: the speaker's own, or that of the
latest of the subs it feeds, for the receiver waits for that one and the bass processor delays the others.
*/
function ownArrival(
	channel: ChannelSolution,
	{subs}: Solution,
): {readonly ms: number; readonly metres?: number} | undefined {
	if (channel.arrivalMs)
		return {ms: channel.arrivalMs.value, ...(channel.distance && {metres: channel.distance.metres})};
	const fed = subs.flatMap(sub =>
		sub.fedBy === channel.id && sub.arrivalMs ? [{...sub, ms: sub.arrivalMs.value}] : [],
	);
	if (fed.length === 0) return undefined;
	const latest = fed.reduce((a, b) => (b.ms > a.ms ? b : a));
	return {ms: latest.ms, ...(latest.distance && {metres: latest.distance.metres})};
}

/**
Everything that each channel's timing was computed from.

@returns One entry for each channel that the solution could time.
*/
export function timingSides(
	profile: Profile,
	solution: Solution,
	set: SettingsSet | undefined,
): Map<string, TimingSide & {readonly sigma: number}> {
	const {receiver} = profile;
	if (!receiver) return new Map();
	const {timing} = receiver;
	const isDistance = timing.kind === 'distance';
	const solved = solution.channels.flatMap(channel => {
		const {timing: value} = channel;
		const arrival = ownArrival(channel, solution);
		if (!value || !arrival) return [];
		const {exact, stepped, sigma} = value;
		return [
			{
				channel,
				exact,
				stepped,
				sigma,
				kind: value.kind,
				arrivalMs: arrival.ms,
				isBass: isLfe(channel.id),
				distanceMetres: arrival.metres,
				receiverSpeed: receiverSpeed(receiver),
			},
		];
	});
	if (solved.length === 0) return new Map();
	const sharedOffset = median(solved.map(timingOffset));
	const sharedShift = median(solved.map(({exact, stepped}) => stepped - exact));
	return new Map(
		solved.map(({channel, ...side}) => [
			channel.id,
			{
				...side,
				sharedOffset,
				sharedShift,
				dialled: dialledTiming(profile, set, channel.id) ?? side.stepped,
				speedOfSound: solution.speedOfSound.metresPerSecond,
				step: isDistance ? timing.stepMetres : timing.stepMs,
				minimum: isDistance ? timing.minimumMetres : timing.minimumMs,
				maximum: isDistance ? timing.maximumMetres : timing.maximumMs,
			},
		]),
	);
}
