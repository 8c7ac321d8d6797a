import {median} from '../../numeric/statistics.ts';
import type {Profile, SettingsSet} from '../../profile/types.ts';
import type {ChannelSolution, Solution} from '../result.ts';
import {type TimingSide, timingOffset} from './timingParts.ts';

/** The receiver's own constant where it states none, m/s. */
const usualReceiverSpeed = 343;

/** What the set holds for a channel's timing, in the kind of entry that the receiver takes. */
export function dialledTiming(
	profile: Profile,
	set: SettingsSet | undefined,
	id: string,
): number | undefined {
	const channel = set?.channels[id as keyof typeof set.channels];
	return profile.receiver?.timing.kind === 'distance'
		? channel?.distanceMetres?.stepped
		: channel?.delayMs?.stepped;
}

/** Distance of the one speaker or sub behind a channel; nothing where several subs share it. */
function distanceOf(channel: ChannelSolution, solution: Solution): number | undefined {
	if (channel.distance) return channel.distance.metres;
	const fed = solution.subs.filter(sub => sub.fedBy === channel.id);
	return fed.length === 1 ? fed[0]!.distance?.metres : undefined;
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
	const receiverSpeed = (isDistance && timing.speedOfSoundMetresPerSecond) || usualReceiverSpeed;
	const solved = solution.channels.flatMap(channel => {
		const {timing: value, arrivalMs} = channel;
		if (!value || !arrivalMs) return [];
		const {exact, stepped, sigma} = value;
		return [{channel, exact, stepped, sigma, kind: value.kind, arrivalMs: arrivalMs.value, receiverSpeed}];
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
				distanceMetres: distanceOf(channel, solution),
				speedOfSound: solution.speedOfSound.metresPerSecond,
				step: isDistance ? timing.stepMetres : timing.stepMs,
				minimum: isDistance ? timing.minimumMetres : timing.minimumMs,
				maximum: isDistance ? timing.maximumMetres : timing.maximumMs,
			},
		]),
	);
}
