import type {Profile, Room} from '../../profile/types.ts';
import type {NetworkResult} from '../survey/result.ts';
import type {RoomSize} from '../survey/roomSize.ts';
import type {Vector} from '../survey/vectors.ts';
import {isKnown} from './angles.ts';

type RoomPlace = {readonly x: number; readonly y: number; readonly z: number};

/** What a plan of the room is drawn from. Lengths in metres, in the room's frame. */
export type PlanPoints = {
	/** Walls and ceiling as far as they are known. */
	readonly room: Pick<Room, 'widthMetres' | 'lengthMetres' | 'ceiling' | 'missingCorner'>;
	readonly points: ReadonlyArray<
		RoomPlace & {
			readonly id: string;
			/** Short, for the drawing. */
			readonly label: string;
			readonly name: string;
			readonly kind: 'seat' | 'speaker' | 'sub' | 'screen';
			readonly reference?: boolean;
			/** Where a speaker should point: the ear at the reference seat. */
			readonly aim?: RoomPlace;
			/** Where it stood before. */
			readonly before?: RoomPlace;
			/** Standard error ellipse, where it is large enough to matter; its angle from x towards y. */
			readonly ellipse?: {
				readonly majorMetres: number;
				readonly minorMetres: number;
				readonly angleDegrees: number;
			};
			readonly widthMetres?: number;
			readonly heightMetres?: number;
		}
	>;
};

/** An error ellipse smaller than this is smaller than any mark in the plan, metres. */
const visibleEllipseMetres = 0.02;

function roomOf({widthMetres, lengthMetres, ceiling}: RoomSize): PlanPoints['room'] {
	return {
		...(widthMetres !== undefined && {widthMetres}),
		...(lengthMetres !== undefined && {lengthMetres}),
		...(ceiling && {
			ceiling:
				'heightMetres' in ceiling
					? {kind: 'flat', heightMetres: ceiling.heightMetres}
					: {
							kind: 'sloped',
							between: ceiling.axis === 0 ? 'wall:left-wall:right' : 'wall:front-wall:back',
							heightsMetres: [...ceiling.heightsMetres],
						},
		}),
	};
}

/** The plan of an adjusted network: everything whose place the readings tell, aims, and the ellipses that matter. */
export function planPoints(
	{room, points}: Pick<NetworkResult, 'room' | 'points'>,
	screen: Profile['screen'] = undefined,
	stated: Pick<Room, 'ceiling' | 'missingCorner'> = {},
): PlanPoints {
	const [ear] = points.filter(({kind}) => kind === 'seat');
	const named = ([x, y, z]: Vector): RoomPlace => ({x, y, z});
	return {
		// What no plane tells: a ceiling with a ridge or a break, and a corner that is missing.
		room: {
			...roomOf(room),
			...(stated.ceiling?.kind === 'broken' && {ceiling: stated.ceiling}),
			...(stated.missingCorner && {missingCorner: stated.missingCorner}),
		},
		points: points.filter(isKnown).map(point => {
			const {id, label, kind, at, ellipse} = point;
			return {
				id,
				label: kind === 'seat' ? label : id,
				name: label,
				kind,
				...named(at),
				...(point === ear && {reference: true}),
				...(kind === 'speaker' && ear && isKnown(ear) && {aim: named(ear.at)}),
				...(ellipse.semiMajorMetres > visibleEllipseMetres && {
					ellipse: {
						majorMetres: ellipse.semiMajorMetres,
						minorMetres: ellipse.semiMinorMetres,
						angleDegrees: ellipse.angleDegrees,
					},
				}),
				...(kind === 'screen' && screen?.widthMetres !== undefined && {widthMetres: screen.widthMetres}),
				...(kind === 'screen' && screen?.heightMetres !== undefined && {heightMetres: screen.heightMetres}),
			};
		}),
	};
}
