import type {RoomSize, Slope} from '../survey/roomSize.ts';
import type {Vector} from '../survey/vectors.ts';

/** `half`: the screen is on the wall that was opposite; `quarter`: on one of the side walls. */
export type RoomTurn = {
	readonly turn: 'half' | 'quarter';
	/** What showed it: the ceiling's slope, the walls' lengths, or things that stayed. */
	readonly by: 'ceiling' | 'walls' | 'things';
};

/** Walls and heights of one building agree this well between two years, metres. */
const sameSizeMetres = 0.1;
/** A room whose walls, or a ceiling whose ends, differ by less than this looks the same after a turn, metres. */
const tellingMetres = 0.25;
/** A thing that stays is put back this well, metres. */
const sameSpotMetres = 0.15;
/** In the frame of the screen it then seems to have gone at least this far, metres. */
const farMetres = 0.5;

const isNear = (a: number | undefined, b: number | undefined, limit = sameSizeMetres) =>
	a !== undefined && b !== undefined && Math.abs(a - b) <= limit;

function slopeIn({ceiling}: RoomSize): Slope | undefined {
	return ceiling && 'axis' in ceiling ? ceiling : undefined;
}

function bySlope(older: RoomSize, newer: RoomSize): RoomTurn | undefined {
	const [before, after] = [slopeIn(older), slopeIn(newer)];
	if (!before || !after || before.axis !== after.axis) return undefined;
	const [one, other] = before.heightsMetres;
	const [first, second] = after.heightsMetres;
	const isSwapped = Math.abs(one - other) >= tellingMetres && isNear(one, second) && isNear(other, first);
	return isSwapped ? {turn: 'half', by: 'ceiling'} : undefined;
}

function byWalls(older: RoomSize, newer: RoomSize): RoomTurn | undefined {
	const {widthMetres: width, lengthMetres: length} = older;
	const isOblong = width !== undefined && length !== undefined && Math.abs(width - length) >= tellingMetres;
	const isSwapped = isNear(width, newer.lengthMetres) && isNear(length, newer.widthMetres);
	return isOblong && isSwapped ? {turn: 'quarter', by: 'walls'} : undefined;
}

function byThings(
	{widthMetres, lengthMetres}: RoomSize,
	newer: RoomSize,
	places: ReadonlyArray<readonly [before: Vector, after: Vector]>,
): RoomTurn | undefined {
	if (!isNear(widthMetres, newer.widthMetres) || !isNear(lengthMetres, newer.lengthMetres)) return undefined;
	const apart = ([ax, ay, az]: Vector, [bx, by, bz]: Vector) => Math.hypot(ax - bx, ay - by, az - bz);
	const stayed = places.filter(([before, after]) => apart(before, after) <= sameSpotMetres).length;
	const putBack = places.filter(
		([before, after]) =>
			apart(before, after) >= farMetres &&
			apart([widthMetres! - before[0], lengthMetres! - before[1], before[2]], after) <= sameSpotMetres,
	).length;
	return putBack >= 2 && putBack > stayed ? {turn: 'half', by: 'things'} : undefined;
}

/**
Whether the screen hangs on another wall of the same room, so that “left” and “front” mean other walls than before.

@param places - Places of things that both have, metres, each in the frame of its own year: two or more of which half
a turn puts back show it where neither the ceiling nor the walls can.
@returns undefined where nothing shows a turn. In a room with a flat ceiling in which everything was turned with the
screen, nothing does.
*/
export function roomTurn(
	older: RoomSize,
	newer: RoomSize,
	places: ReadonlyArray<readonly [before: Vector, after: Vector]>,
): RoomTurn | undefined {
	return byWalls(older, newer) ?? bySlope(older, newer) ?? byThings(older, newer, places);
}
