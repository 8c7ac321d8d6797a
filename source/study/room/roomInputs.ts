import type {Profile} from '../../profile/types.ts';
import type {NetworkResult} from '../survey/result.ts';
import {decayOf} from './decayOf.ts';
import type {Placed, RoomInputs} from './roomStudy.ts';
import {shapeOf} from './shapeOf.ts';

/**
What a room's study is made from: the shape, the decay, and everything whose place the tape tells to 30 cm or better.
Where the shape is not known, what is missing instead.

@param survey - The adjusted tape network of the profile.
@param speedOfSound - Metres per second.
*/
export function roomInputs(
	profile: Pick<Profile, 'room' | 'seats'>,
	survey: Pick<NetworkResult, 'room' | 'points'>,
	speedOfSound: number,
): RoomInputs | {readonly missing: ReadonlyArray<'width' | 'length' | 'height'>} {
	const known = shapeOf(profile.room, survey.room);
	if (!known.shape) return {missing: known.missing};
	const placed = survey.points.filter(({status}) => status === 'determined' || status === 'weak');
	const ofKind = (kind: 'seat' | 'sub' | 'speaker'): Placed[] =>
		placed.filter(point => point.kind === kind).map(({id, at}) => ({id, at}));
	const reference = profile.seats.find(seat => seat.reference) ?? profile.seats[0];
	return {
		shape: known.shape,
		isNearest: known.isNearest,
		decay: decayOf(
			known.shape,
			profile.room.decaySeconds === undefined ? {} : {statedSeconds: profile.room.decaySeconds},
			speedOfSound,
		),
		speedOfSound,
		seats: ofKind('seat').sort((a, b) => Number(b.id === reference?.id) - Number(a.id === reference?.id)),
		subs: ofKind('sub'),
		speakers: ofKind('speaker'),
	};
}
