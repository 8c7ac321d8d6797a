import {referenceSeat} from '../../profile/ask/seats.ts';
import {type ChannelId, channelNames, isLfe} from '../../profile/channels.ts';
import type {Profile} from '../../profile/types.ts';

export type PointKind = 'seat' | 'speaker' | 'sub' | 'screen';
/** A thing in the room that a tape can be held to: a speaker's acoustic centre, a sub's cone, an ear, the screen's centre. */
export type NetworkPoint = {
	readonly id: string;
	readonly kind: PointKind;
	readonly label: string;
	readonly isFixed: boolean;
};

/** What a survey is made from. */
export type SurveyInput = Pick<Profile, 'room' | 'seats' | 'channels' | 'subs' | 'kit' | 'tape'>;

/** Every point of a profile, the reference seat first. LFE channels have no speaker and so no point. */
export function pointsOf(profile: Pick<Profile, 'seats' | 'channels' | 'subs'>): NetworkPoint[] {
	const reference = referenceSeat(profile);
	const seats = [reference, ...profile.seats.filter(seat => seat !== reference)];
	return [
		...seats.map(({id, name}) => ({id, kind: 'seat' as const, label: name, isFixed: false})),
		{id: 'screen', kind: 'screen', label: 'Screen', isFixed: false},
		...profile.channels
			.filter(({id}) => !isLfe(id))
			.map(({id, fixed}) => ({
				id,
				kind: 'speaker' as const,
				label: channelNames[id as ChannelId],
				isFixed: fixed ?? false,
			})),
		...(profile.subs ?? []).map(({id, name, fixed}) => ({
			id,
			kind: 'sub' as const,
			label: name,
			isFixed: fixed ?? false,
		})),
	];
}
