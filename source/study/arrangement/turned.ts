import type {Room} from '../../profile/types.ts';
import type {RoomShape} from '../room/shape.ts';
import {type KeepOut, keepOuts} from './keepOut.ts';

type Feature = NonNullable<Room['features']>[number];
export type OtherWall = 'wall:left' | 'wall:right' | 'wall:back';

/** The room as it is seen with the screen on another wall: that wall is then the front. */
export function turnedShape(shape: RoomShape, wall: OtherWall): RoomShape {
	const isSideways = wall !== 'wall:back';
	const plan = isSideways
		? {widthMetres: shape.lengthMetres, lengthMetres: shape.widthMetres}
		: {widthMetres: shape.widthMetres, lengthMetres: shape.lengthMetres};
	if (shape.kind === 'box') return {...shape, ...plan};
	if (shape.kind === 'ceiling') {
		const end = shape.across === 0 ? shape.widthMetres : shape.lengthMetres;
		// Which way the new axis runs against the old: x becomes y and y becomes x, one of them turned round.
		const isMirrored =
			wall === 'wall:back' || (wall === 'wall:left' ? shape.across === 1 : shape.across === 0);
		const places = isMirrored
			? shape.places.map(place => ({...place, atMetres: end - place.atMetres})).reverse()
			: shape.places;
		return {...shape, ...plan, across: isSideways ? (shape.across === 0 ? 1 : 0) : shape.across, places};
	}

	const {corner, widthMetres, lengthMetres} = shape.missing;
	return {
		...shape,
		...plan,
		missing: {
			corner: cornersFrom[wall][corner],
			widthMetres: isSideways ? lengthMetres : widthMetres,
			lengthMetres: isSideways ? widthMetres : lengthMetres,
		},
	};
}

/** Where each corner is once one faces another wall. */
const cornersFrom = {
	// Facing the left wall, the screen wall is on the right hand.
	'wall:left': {
		frontLeft: 'frontRight',
		backLeft: 'frontLeft',
		backRight: 'backLeft',
		frontRight: 'backRight',
	},
	'wall:right': {
		frontRight: 'frontLeft',
		backRight: 'frontRight',
		backLeft: 'backRight',
		frontLeft: 'backLeft',
	},
	'wall:back': {
		backRight: 'frontLeft',
		backLeft: 'frontRight',
		frontLeft: 'backRight',
		frontRight: 'backLeft',
	},
} as const;

/** What stands in the way on the floor, as seen with the screen on another wall. */
export function turnedKeepOuts(features: readonly Feature[], shape: RoomShape, wall: OtherWall): KeepOut[] {
	const {widthMetres: width, lengthMetres: length} = shape;
	return keepOuts(features, shape).map(({left, right, near, far, ...about}) => {
		switch (wall) {
			case 'wall:back':
				return {...about, left: width - right, right: width - left, near: length - far, far: length - near};
			case 'wall:left':
				return {...about, left: length - far, right: length - near, near: left, far: right};
			default:
				return {...about, left: near, right: far, near: width - right, far: width - left};
		}
	});
}
