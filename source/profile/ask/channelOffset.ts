import type {ChannelId, Profile} from '../types.ts';

/** How far above (+) or below (−) the rest a channel with a speaker is wanted, dB; 0 where the target says nothing of it. */
export function channelOffsetOf({target}: Pick<Profile, 'target'>, id: string): number {
	return target?.channelOffsetsDb?.[id as ChannelId] ?? 0;
}
