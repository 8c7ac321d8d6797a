import {isLfe, isOverhead} from '../../profile/channels.ts';
import {layoutOf} from '../../profile/layouts.ts';
import {flaggedDegrees} from '../../profile/practice.ts';
import type {Profile} from '../../profile/types.ts';
import type {Placed} from '../room/roomStudy.ts';
import {insideOf, type RoomShape} from '../room/shape.ts';
import {directionOf, wrapDegrees} from '../survey/directions.ts';
import {subtract, type Vector} from '../survey/vectors.ts';
import type {ThingMove} from './moves.ts';

/** A speaker at ear height, how far it is outside its published azimuths, and where it would be within them. */
type SpeakerAngle = {
	readonly id: string;
	readonly at: Vector;
	/** Beyond the nearer end of its range, degrees; 0 within. */
	readonly outsideDegrees: number;
	/** Its azimuth in the room where the range begins again, degrees. */
	readonly edgeDegrees: number;
};

/** Azimuths of the speakers at ear height from an ear, against the published ranges; where none is published, within five degrees. */
export function speakerAngles(
	{channels}: Pick<Profile, 'channels'>,
	{widthMetres}: Pick<RoomShape, 'widthMetres'>,
	speakers: readonly Placed[],
	ear: Vector,
): SpeakerAngle[] {
	const {places} = layoutOf(channels.map(({id}) => id));
	const centre = speakers.find(({id}) => id === 'FC')?.at ?? [widthMetres / 2, 0, ear[2]];
	const ahead = directionOf(subtract(centre, ear)).azimuthDegrees;
	return speakers.flatMap(({id, at}): SpeakerAngle[] => {
		const channel = channels.find(one => one.id === id);
		const place = channel && !isLfe(channel.id) && !isOverhead(channel.id) && places.get(channel.id);
		if (!place) return [];
		const off = wrapDegrees(directionOf(subtract(at, ear)).azimuthDegrees - ahead - place.azimuthDegrees);
		const [low, high] = place.azimuthRange?.map(limit => limit - place.azimuthDegrees) ?? [
			-flaggedDegrees,
			flaggedDegrees,
		];
		const outsideDegrees = Math.max(0, low! - off, off - high!);
		const within = Math.min(high!, Math.max(low!, off));
		return [{id, at, outsideDegrees, edgeDegrees: wrapDegrees(ahead + place.azimuthDegrees + within)}];
	});
}

/** Outside its range by less than this a speaker is left where it stands, degrees. Judgement: a hand's width at two metres. */
const leftDegrees = 2;
/** A speaker's centre is kept this far off every wall, and no nearer to the ear than that, metres. */
const offWallMetres = 0.2;
const leastWayMetres = 0.8;
/** It goes this far into its range, so that a tape's error does not put it out again, degrees. */
const insideDegrees = 1;

/** What is carried for an arrangement: seats and subs, then the speakers that it would leave outside their angles. */
export function withSpeakerMoves(
	moves: readonly ThingMove[],
	...[profile, shape, speakers, ear]: Parameters<typeof speakerMoves>
): readonly ThingMove[] {
	return moves.length === 0 ? moves : [...moves, ...speakerMoves(profile, shape, speakers, ear)];
}

/**
Speakers that an arrangement leaves outside their published angles, each moved round the reference ear to where its range
begins, as far from the ear as it stands or as the walls let it. Only what was taped or planned is moved: the others have
no place yet.
*/
export function speakerMoves(
	profile: Pick<Profile, 'channels' | 'tape' | 'planned'>,
	shape: RoomShape,
	speakers: readonly Placed[],
	ear: Vector,
): ThingMove[] {
	const isInside = insideOf(shape);
	const {tape = [], planned} = profile;
	const isPlaced = (id: string) =>
		tape.some(({from, to, setAside}) => !setAside && (from === id || to === id)) ||
		planned?.places.some(place => place.id === id) === true;
	return speakerAngles(profile, shape, speakers, ear).flatMap(({id, at, outsideDegrees, edgeDegrees}) => {
		const isFixed = profile.channels.find(one => one.id === id)?.fixed === true;
		if (outsideDegrees < leftDegrees || isFixed || !isPlaced(id)) return [];
		const now = directionOf(subtract(at, ear)).azimuthDegrees;
		const azimuth = edgeDegrees + insideDegrees * Math.sign(wrapDegrees(edgeDegrees - now));
		const [right, back] = [-Math.sin((azimuth * Math.PI) / 180), -Math.cos((azimuth * Math.PI) / 180)];
		for (let way = Math.hypot(at[0] - ear[0], at[1] - ear[1]); way >= leastWayMetres; way -= 0.05) {
			const to: Vector = [ear[0] + way * right, ear[1] + way * back, at[2]];
			const isClear = [-offWallMetres, offWallMetres].every(
				off => isInside([to[0] + off, to[1], to[2]]) && isInside([to[0], to[1] + off, to[2]]),
			);
			if (isClear) return [{id, kind: 'speaker' as const, from: at, to}];
		}

		return [];
	});
}
