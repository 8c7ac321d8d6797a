import {type ChannelId, channelNames} from '../../profile/channels.ts';
import type {Profile} from '../../profile/types.ts';

const planeNames: Readonly<Record<string, string>> = {
	'wall:left': 'left wall',
	'wall:right': 'right wall',
	'wall:front': 'front wall',
	'wall:back': 'back wall',
	floor: 'floor',
	ceiling: 'ceiling',
	screen: 'screen',
	background: 'background',
};

export const isPlane = (end: string): boolean =>
	end.startsWith('wall:') || end === 'floor' || end === 'ceiling';

/** The plain name of a channel, sub, seat, plane or several of them at once. */
export function plainName(profile: Profile, id: string): string {
	if (id.includes('+')) {
		return id
			.split('+')
			.map(part => plainName(profile, part))
			.join(' and ');
	}

	return (
		profile.seats.find(seat => seat.id === id)?.name ??
		profile.subs?.find(sub => sub.id === id)?.name ??
		planeNames[id] ??
		(channelNames as Partial<Record<string, string>>)[id as ChannelId] ??
		id
	);
}
