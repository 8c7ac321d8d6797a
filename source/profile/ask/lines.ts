import {isLfe} from '../channels.ts';
import type {OutputSetting, Profile, SourceId} from '../types.ts';
import {receiverSpeed} from './boxes.ts';
import {type SetInForce, settingFor} from './settings.ts';
import {processorOf, subsOf, type WithSubs} from './subs.ts';

/** The way from a channel of the receiver to a speaker or sub; for a sub behind the processor through one of its outputs. */
export type Line = {readonly channel: string; readonly output?: string};

/** A profile as far as lines go. */
export type WithLines = WithSubs & Pick<Profile, 'bassProcessor' | 'receiver'>;

/** What a set of settings does to one line; `unstated` where the set does not say, for the asker to decide what then. */
export type LineEffect = {
	/** Trim and gain together, dB; a box that states none counts as 0 beside one that does. The master volume is apart. */
	readonly gainDb: number | 'unstated';
	/**
	Delay that the boxes add, ms; where the receiver takes distances only differences between lines mean anything. What the
	receiver adds must be stated; an output of the processor that states none adds none.
	*/
	readonly delayMs: number | 'unstated';
	readonly isInverted: boolean;
	readonly crossoverHertz: number | 'full' | 'unstated';
};

/** Channels that drive a speaker of their own, in the profile's order. */
export function mainChannels({channels}: Pick<Profile, 'channels'>): Profile['channels'] {
	return channels.filter(({id}) => !isLfe(id));
}

/** The line of a speaker or sub. */
export function lineOf(profile: WithLines, source: SourceId): Line {
	const sub = subsOf(profile).find(({id}) => id === source);
	if (!sub) return {channel: source};
	return processorOf(profile, sub)
		? {channel: sub.fedBy, output: sub.processorOutput!}
		: {channel: sub.fedBy};
}

/**
What a set of settings does to the line of a speaker or sub: the one answer for all who ask.

@param line - From `lineOf`.
*/
export function effectOf(
	profile: Pick<Profile, 'receiver'>,
	set: SetInForce | undefined,
	{channel, output}: Line,
): LineEffect {
	const own = settingFor(set, channel);
	const behind: OutputSetting | undefined = output === undefined ? undefined : set?.outputs?.[output];
	const trimDb = own?.trimDb?.stepped;
	const gainDb = behind?.gainDb?.stepped;
	const receiverMs = receiverDelayMs(profile, set, channel);
	return {
		gainDb: trimDb === undefined && gainDb === undefined ? 'unstated' : (trimDb ?? 0) + (gainDb ?? 0),
		delayMs: receiverMs === undefined ? 'unstated' : receiverMs + (behind?.delayMs?.stepped ?? 0),
		isInverted: (own?.polarityInverted ?? false) !== (behind?.polarityInverted ?? false),
		crossoverHertz: own?.crossoverHertz ?? 'unstated',
	};
}

/** The value, or what the asker takes where a set does not state it. */
export function orElse<Value, Otherwise>(value: Value | 'unstated', otherwise: Otherwise) {
	return value === 'unstated' ? otherwise : (value as Exclude<Value, 'unstated'>);
}

/**
Delay that the receiver adds to a channel, ms. A distance is the delay it stands for: the receiver delays a near speaker
more, by its own speed of sound.

@returns `undefined` where the set states neither delay nor distance.
*/
export function receiverDelayMs(
	profile: Pick<Profile, 'receiver'>,
	set: SetInForce | undefined,
	channel: string,
): number | undefined {
	const {delayMs, distanceMetres} = settingFor(set, channel) ?? {};
	if (delayMs) return delayMs.stepped;
	return distanceMetres && (-1000 * distanceMetres.stepped) / receiverSpeed(profile.receiver);
}
