import {channelNames} from '../../profile/channels.ts';
import type {ChannelId, Profile, Seat} from '../../profile/types.ts';

const planeNames: Readonly<Record<string, string>> = {
	'wall:left': 'left wall',
	'wall:right': 'right wall',
	'wall:front': 'screen wall',
	'wall:back': 'back wall',
	floor: 'floor',
	ceiling: 'ceiling',
	screen: 'centre of the screen',
	background: 'the quiet room',
};

/** The seat that the settings are made for. */
export function referenceSeat(profile: Profile): Seat {
	return profile.seats.find(({reference}) => reference) ?? profile.seats[0]!;
}

/** Plain name of a channel, sub, seat, plane or the screen; the id itself where nothing is known. */
export function nameOf(profile: Profile, id: string): string {
	return (
		channelNames[id as ChannelId] ??
		profile.subs?.find(sub => sub.id === id)?.name ??
		profile.seats.find(seat => seat.id === id)?.name ??
		planeNames[id] ??
		id
	);
}

/** Whether a speaker hangs above the seats, where taping means a ladder. */
export function isOverhead(id: string): boolean {
	return id.startsWith('Tp');
}
