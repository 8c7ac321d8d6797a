import type {Room} from '../../profile/types.ts';
import type {RoomSize} from '../survey/roomSize.ts';
import type {RoomShape} from './shape.ts';

/** The room's shape as far as it is told; `missing` names what is not, and `nearest` says where it had to be made simpler. */
export type KnownShape =
	| {
			readonly shape: RoomShape;
			/** The room is not one of the shapes that are computed: this is the nearest. */
			readonly isNearest: boolean;
	  }
	| {readonly shape?: undefined; readonly missing: ReadonlyArray<'width' | 'length' | 'height'>};

/** A ceiling that rises or falls by less than this over the room is flat, metres: less than a tape tells at a height. */
const flatWithinMetres = 0.02;

/**
The shape of a room from what the profile states and the tape network found. A dimension stated in the profile is exact
and comes first.

@param size - Width, length and ceiling as the tape readings tell them.
*/
export function shapeOf(room: Room, size: RoomSize): KnownShape {
	const widthMetres = room.widthMetres ?? size.widthMetres;
	const lengthMetres = room.lengthMetres ?? size.lengthMetres;
	const ceiling = room.ceiling ?? taped(size);
	const missing = [
		...(widthMetres === undefined ? (['width'] as const) : []),
		...(lengthMetres === undefined ? (['length'] as const) : []),
		...(ceiling === undefined ? (['height'] as const) : []),
	];
	if (widthMetres === undefined || lengthMetres === undefined || ceiling === undefined) return {missing};

	const plan = {widthMetres, lengthMetres};
	const isAcross = ceiling.kind !== 'flat' && ceiling.between === 'wall:left-wall:right';
	const end = isAcross ? widthMetres : lengthMetres;
	const places =
		ceiling.kind === 'flat'
			? []
			: ceiling.kind === 'sloped'
				? [
						{atMetres: 0, heightMetres: ceiling.heightsMetres[0]},
						{atMetres: end, heightMetres: ceiling.heightsMetres[1]},
					]
				: placesTo(ceiling.places, end);
	const heights =
		ceiling.kind === 'flat' ? [ceiling.heightMetres] : places.map(({heightMetres}) => heightMetres);
	const isFlat = Math.max(...heights) - Math.min(...heights) < flatWithinMetres;
	const {missingCorner} = room;
	if (missingCorner) {
		const heightMetres = heights.reduce((sum, height) => sum + height, 0) / heights.length;
		return {shape: {kind: 'corner', ...plan, heightMetres, missing: missingCorner}, isNearest: !isFlat};
	}

	return isFlat
		? {shape: {kind: 'box', ...plan, heightMetres: heights[0]!}, isNearest: false}
		: {shape: {kind: 'ceiling', ...plan, across: isAcross ? 0 : 1, places}, isNearest: false};
}

/** The places of a broken ceiling, the last of them at the far wall: a tape seldom ends on the very millimetre. */
function placesTo(
	places: ReadonlyArray<{readonly atMetres: number; readonly heightMetres: number}>,
	end: number,
): Array<{atMetres: number; heightMetres: number}> {
	return places.map(({atMetres, heightMetres}, i) => ({
		atMetres: i === 0 ? 0 : i === places.length - 1 ? end : atMetres,
		heightMetres,
	}));
}

function taped({ceiling}: RoomSize): Room['ceiling'] {
	if (!ceiling) return undefined;
	if ('heightMetres' in ceiling) return {kind: 'flat', heightMetres: ceiling.heightMetres};
	return {
		kind: 'sloped',
		between: ceiling.axis === 0 ? 'wall:left-wall:right' : 'wall:front-wall:back',
		heightsMetres: [...ceiling.heightsMetres],
	};
}
