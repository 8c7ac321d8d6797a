import type {Ellipse, NetworkResult} from './network/result.ts';
import {ceilingHeightAt} from './roomSize.ts';
import type {Vector} from './vectors.ts';

/** What a plan of the room is drawn from. Lengths in metres, in the room's frame. */
export type PlanPoints = {
	readonly room: {
		readonly widthMetres?: number;
		readonly lengthMetres?: number;
		/** Heights of the ceiling above the four corners: front left, front right, back left, back right. */
		readonly ceiling?: readonly [number, number, number, number];
	};
	readonly points: ReadonlyArray<{
		readonly id: string;
		readonly label: string;
		readonly kind: 'seat' | 'speaker' | 'sub' | 'screen';
		readonly x: number;
		readonly y: number;
		readonly z: number;
		/** False where the readings do not tell the place and it is the usual one. */
		readonly isKnown: boolean;
		/** Where it should point: the ear at the reference seat. Speakers only. */
		readonly aim?: {readonly x: number; readonly y: number; readonly z: number};
		/** Standard error ellipse, where it is large enough to matter. */
		readonly ellipse?: Ellipse;
	}>;
};

/** An error ellipse smaller than this is smaller than any mark in the plan, metres. */
const visibleEllipseMetres = 0.02;

/** The plan of an adjusted network: room, points, aims, and the ellipses that matter. */
export function planPoints({room, points}: Pick<NetworkResult, 'room' | 'points'>): PlanPoints {
	const {widthMetres, lengthMetres} = room;
	const corner = (x = 0, y = 0) => ceilingHeightAt(room, x, y);
	const corners = [
		corner(0, 0),
		corner(widthMetres, 0),
		corner(0, lengthMetres),
		corner(widthMetres, lengthMetres),
	];
	const isCeilingKnown = corners.every(height => height !== undefined);
	const [ear] = points.filter(({kind}) => kind === 'seat');
	const named = ([x, y, z]: Vector) => ({x, y, z});
	return {
		room: {
			...(widthMetres !== undefined && {widthMetres}),
			...(lengthMetres !== undefined && {lengthMetres}),
			...(isCeilingKnown && {ceiling: corners as unknown as [number, number, number, number]}),
		},
		points: points.map(({id, label, kind, at, ellipse, status}) => ({
			id,
			label,
			kind,
			...named(at),
			isKnown: status === 'determined' || status === 'weak',
			...(kind === 'speaker' && ear && {aim: named(ear.at)}),
			...(ellipse.semiMajorMetres > visibleEllipseMetres && ellipse.semiMajorMetres < 2 && {ellipse}),
		})),
	};
}
