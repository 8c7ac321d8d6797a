import {receiverSpeed} from '../../../profile/ask/boxes.ts';
import {settingFor} from '../../../profile/ask/settings.ts';
import {subsByFeed} from '../../../profile/ask/subs.ts';
import {isLfe} from '../../../profile/channels.ts';
import type {Profile, SettingsSet} from '../../../profile/types.ts';
import {median} from '../../../science/numeric/statistics.ts';
import type {ChannelSolution, Solution} from '../../calibration/result.ts';
import {middleOf} from '../../calibration/timing/middleOf.ts';
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

type OwnArrival = {readonly ms: number; readonly metres?: number};

/**
Arrival behind one channel of the receiver, ms, and the distance that it comes from: the speaker's own, or that of the
latest of the outputs it feeds, for the receiver waits for that one and the bass processor delays the others.
*/
function ownArrival(profile: Profile, channel: ChannelSolution, solution: Solution): OwnArrival | undefined {
	if (channel.arrivalMs)
		return {ms: channel.arrivalMs.value, ...(channel.distance && {metres: channel.distance.metres})};
	const byOutput = subsByFeed(profile).get(channel.id);
	const outputs = [...(byOutput?.values() ?? [])].flatMap(ids => togetherArrival(ids, solution) ?? []);
	return outputs.length === 0 ? undefined : outputs.reduce((a, b) => (b.ms > a.ms ? b : a));
}

/** The middle of subs that nothing sets apart, and of the distances of the first and the last of them. */
function togetherArrival(ids: readonly string[], {subs}: Solution): OwnArrival | undefined {
	const known = subs
		.flatMap(({id, arrivalMs, distance}) =>
			ids.includes(id) && arrivalMs ? [{ms: arrivalMs.value, metres: distance?.metres}] : [],
		)
		.toSorted((a, b) => a.ms - b.ms);
	const [first, last] = [known[0], known.at(-1)];
	if (!first || !last) return undefined;
	const metres =
		first.metres === undefined || last.metres === undefined ? undefined : (first.metres + last.metres) / 2;
	return {ms: middleOf(known.map(({ms}) => ms)), ...(metres !== undefined && {metres})};
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
		const arrival = ownArrival(profile, channel, solution);
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
