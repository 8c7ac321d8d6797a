import type {Profile} from '../types.ts';
import {type Line, receiverDelayMs} from './lines.ts';
import type {SetInForce} from './settings.ts';

/** What stands in the receiver for one channel. */
export type ChannelState = {
	readonly trimDb: number;
	readonly delayMs: number;
	readonly crossoverHertz: number | 'full' | undefined;
	readonly isInverted: boolean;
};

/** What stands in one output of the bass processor. */
export type OutputState = {readonly gainDb: number; readonly delayMs: number; readonly isInverted: boolean};

/** Everything dialled in that a meter can hear. */
export type BoxState = {
	readonly channels: ReadonlyMap<string, ChannelState>;
	readonly outputs: ReadonlyMap<string, OutputState>;
	readonly masterDb: number;
	/** By speaker or sub, level that no setting accounts for, dB: a cover left on, a knob turned. */
	readonly besides?: ReadonlyMap<string, number>;
};

const untouchedChannel: ChannelState = {trimDb: 0, delayMs: 0, crossoverHertz: undefined, isInverted: false};
const untouchedOutput: OutputState = {gainDb: 0, delayMs: 0, isInverted: false};

export const channelState = (state: BoxState, id: string): ChannelState =>
	state.channels.get(id) ?? untouchedChannel;
export const outputState = (state: BoxState, id: string): OutputState =>
	state.outputs.get(id) ?? untouchedOutput;

/**
A set of settings as what it does to the sound. Distances become the delays they stand for: the receiver delays a near
speaker more, by its own speed of sound.

@param set - What the set does not name counts as untouched: trim 0 dB, no delay, not inverted.
*/
export function boxState(profile: Pick<Profile, 'receiver'>, set: SetInForce | undefined): BoxState {
	const channels = new Map<string, ChannelState>();
	for (const [id, setting] of Object.entries(set?.channels ?? {})) {
		channels.set(id, {
			trimDb: setting.trimDb?.stepped ?? 0,
			delayMs: receiverDelayMs(profile, set, id) ?? 0,
			crossoverHertz: setting.crossoverHertz,
			isInverted: setting.polarityInverted ?? false,
		});
	}

	const outputs = new Map<string, OutputState>();
	for (const [id, setting] of Object.entries(set?.outputs ?? {})) {
		outputs.set(id, {
			gainDb: setting.gainDb?.stepped ?? 0,
			delayMs: setting.delayMs?.stepped ?? 0,
			isInverted: setting.polarityInverted ?? false,
		});
	}

	return {channels, outputs, masterDb: set?.masterVolumeDb ?? 0};
}

/** Level that the settings add to a line with the master volume, dB. */
export function gainWithMaster(state: BoxState, {channel, output}: Line): number {
	return (
		channelState(state, channel).trimDb +
		(output === undefined ? 0 : outputState(state, output).gainDb) +
		state.masterDb
	);
}

/** Delay that the settings add to a line, ms. */
export function delayOf(state: BoxState, {channel, output}: Line): number {
	return (
		channelState(state, channel).delayMs + (output === undefined ? 0 : outputState(state, output).delayMs)
	);
}

/** Whether the settings invert a line. */
export function isInverted(state: BoxState, {channel, output}: Line): boolean {
	return (
		channelState(state, channel).isInverted !==
		(output !== undefined && outputState(state, output).isInverted)
	);
}

/** The same settings with one channel's changed. */
export function withChannel(state: BoxState, id: string, change: Partial<ChannelState>): BoxState {
	return {...state, channels: new Map(state.channels).set(id, {...channelState(state, id), ...change})};
}

/** The same settings with one output's changed. */
export function withOutput(state: BoxState, id: string, change: Partial<OutputState>): BoxState {
	return {...state, outputs: new Map(state.outputs).set(id, {...outputState(state, id), ...change})};
}
