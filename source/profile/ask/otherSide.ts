import {type ChannelId, channelNames} from '../channels.ts';

/** The channel on the other side of the room: FL for FR, TpSiR for TpSiL. `undefined` for those in the middle. */
export function otherSide(id: string): ChannelId | undefined {
	const mirrored = id.includes('L') ? id.replace(/L(?=[cswd]?$|S)/, 'R') : id.replace(/R(?=[cswd]?$|S)/, 'L');
	return mirrored !== id && mirrored in channelNames ? (mirrored as ChannelId) : undefined;
}
