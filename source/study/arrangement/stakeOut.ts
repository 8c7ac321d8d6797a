import {isOverhead} from '../../profile/channels.ts';
import type {Plane} from '../../profile/planes.ts';
import type {Profile} from '../../profile/types.ts';
import {type FloorMiss, floorMiss} from '../placement/goodEnough.ts';
import type {RoomShape} from '../room/shape.ts';

/** A wall and how far from it a thing is to stand, metres. */
export type StakeWall = {
	readonly plane: Plane;
	readonly metres: number;
	/** What of its box a tape can touch on that way, where the box's size is known, and how far that lies before the thing's point. */
	readonly touch?: {readonly at: 'side' | 'back'; readonly beforeMetres: number};
};

/** A thing to be put in its place by tape: its cross on the floor lies where two distances from walls meet. */
export type StakePoint = {
	readonly id: string;
	/** From the nearer side wall, and from the nearer of screen and back wall. */
	readonly walls: readonly [StakeWall, StakeWall];
	readonly heightMetres: number;
	/** Above the ears: its cross is below it, and the laser shows the place. */
	readonly isOverhead: boolean;
};

/** The plan as it is staked out: the reference seat first, other seats, subs, speakers; nothing where nothing was chosen. */
export function stakePoints(
	{planned, seats, subs = [], channels}: Pick<Profile, 'planned' | 'seats' | 'subs' | 'channels'>,
	{widthMetres, lengthMetres}: Pick<RoomShape, 'widthMetres' | 'lengthMetres'>,
): StakePoint[] {
	// Places without what they cost are where a plan began, not what was chosen.
	if (!planned || planned.withinMetres === undefined) return [];
	const order = [
		...seats.filter(({reference}) => reference),
		...seats.filter(({reference}) => !reference),
		...subs,
		...channels,
	].map(({id}) => id as string);
	return order.flatMap((id): StakePoint[] => {
		const place = planned.places.find(one => one.id === id);
		if (!place) return [];
		const {xMetres: x, yMetres: y, zMetres: z} = place;
		const side: StakeWall =
			x <= widthMetres / 2 ? {plane: 'wall:left', metres: x} : {plane: 'wall:right', metres: widthMetres - x};
		const end: StakeWall =
			y <= lengthMetres / 2
				? {plane: 'wall:front', metres: y}
				: {plane: 'wall:back', metres: lengthMetres - y};
		const channel = channels.find(one => one.id === id);
		const sub = subs.find(one => one.id === id);
		return [
			{
				id,
				walls: sub
					? boxedSub(sub, [side, end])
					: channel
						? boxedSpeaker(channel.speaker ?? {}, [side, end])
						: [side, end],
				heightMetres: z,
				isOverhead: channel !== undefined && isOverhead(channel.id),
			},
		];
	});
}

/** Width and depth of a box, metres; either may be missing. */
export type BoxSize = {
	readonly boxWidthMetres?: number | undefined;
	readonly boxDepthMetres?: number | undefined;
};
type Walls = StakePoint['walls'];

const touched = (wall: StakeWall, at: 'side' | 'back', beforeMetres: number | undefined): StakeWall =>
	beforeMetres === undefined || beforeMetres > wall.metres ? wall : {...wall, touch: {at, beforeMetres}};

/** A sub stands with its back to the nearer wall, and its point is the middle of its box. */
function boxedSub({boxWidthMetres: width, boxDepthMetres: depth}: BoxSize, [side, end]: Walls): Walls {
	const halfWidth = width && width / 2;
	const halfDepth = depth && depth / 2;
	return side.metres < end.metres
		? [touched(side, 'back', halfDepth), touched(end, 'side', halfWidth)]
		: [touched(side, 'side', halfWidth), touched(end, 'back', halfDepth)];
}

/** A speaker's point is on its front: in the front its back is to the screen wall, elsewhere to the nearer wall. */
function boxedSpeaker({boxWidthMetres: width, boxDepthMetres: depth}: BoxSize, [side, end]: Walls): Walls {
	const halfWidth = width && width / 2;
	return end.plane !== 'wall:front' && side.metres < end.metres
		? [touched(side, 'back', depth), touched(end, 'side', halfWidth)]
		: [touched(side, 'side', halfWidth), touched(end, 'back', depth)];
}

/** How a thing stands against its plan along one wall's distance. */
export type StakedReading = StakeWall & {
	readonly readMetres: number;
	/** Read minus planned: positive is too far from that wall. */
	readonly offMetres: number;
};

/** What the tape reads of a staked thing against its plan: of each wall the last reading that counts, and both together. */
export function stakedThing(
	{tape = [], planned}: Pick<Profile, 'tape' | 'planned'>,
	{id, walls}: StakePoint,
): FloorMiss & {readonly readings: readonly StakedReading[]} {
	const readings = walls.flatMap((wall): StakedReading[] => {
		const reading = tape.findLast(
			({from, to, setAside}) =>
				!setAside && ((from === id && to === wall.plane) || (to === id && from === wall.plane)),
		);
		return reading ? [{...wall, readMetres: reading.metres, offMetres: reading.metres - wall.metres}] : [];
	});
	return {
		readings,
		...floorMiss(
			{planned},
			readings.map(({offMetres}) => offMetres),
		),
	};
}
