import type {Uncertain} from '../../science/numeric/uncertain.ts';
import {directionOf, wrapDegrees} from '../survey/directions.ts';
import type {NetworkResult, PlacedPoint} from '../survey/result.ts';
import type {Vector} from '../survey/vectors.ts';
import {propagate} from './propagate.ts';

/** A speaker, sub or the screen as seen from a seat. */
export type Sightline = {
	readonly id: string;
	readonly seat: string;
	/** Positive to the left; 0° points from the seat to the screen's centre. */
	readonly azimuthDegrees: Uncertain;
	/** Positive up from the ear. */
	readonly elevationDegrees: Uncertain;
	readonly distanceMetres: Uncertain;
};

/** What straight ahead means at a seat. */
export type Ahead = {
	/** Places in `result.points` whose middle is ahead; none where it is the front wall itself. */
	readonly points: readonly number[];
	readonly what: string;
};

export const isKnown = ({status}: PlacedPoint) => status === 'determined' || status === 'weak';

/** The screen's centre; where it was not measured the front centre speaker, the middle between the fronts, the front wall. */
export function aheadOf({points}: Pick<NetworkResult, 'points'>): Ahead {
	const index = (id: string) => points.findIndex(point => point.id === id && isKnown(point));
	const [screen, centre, left, right] = ['screen', 'FC', 'FL', 'FR'].map(index) as [
		number,
		number,
		number,
		number,
	];
	if (screen >= 0) return {points: [screen], what: 'the screen’s centre'};
	if (centre >= 0) return {points: [centre], what: 'the front centre speaker, as the screen is not measured'};
	if (left >= 0 && right >= 0) {
		return {
			points: [left, right],
			what: 'the middle between the front speakers, as the screen is not measured',
		};
	}

	return {points: [], what: 'square to the screen wall, as the screen is not measured'};
}

const from = (state: Float64Array, seat: number, point: number): Vector => [
	state[point * 3]! - state[seat * 3]!,
	state[point * 3 + 1]! - state[seat * 3 + 1]!,
	state[point * 3 + 2]! - state[seat * 3 + 2]!,
];

/** Azimuth of straight ahead at a seat against the direction square to the screen wall, degrees. */
export function aheadDegrees(state: Float64Array, seat: number, {points}: Ahead): number {
	if (points.length === 0) return 0;
	const sum = points.reduce<Vector>(
		(total, point) => {
			const [x, y] = from(state, seat, point);
			return [total[0] + x, total[1] + y, 0];
		},
		[0, 0, 0],
	);
	return directionOf(sum).azimuthDegrees;
}

/**
Azimuth, elevation and distance of everything that is known, at one seat, with their standard uncertainties.

@param seat - Id of a seat whose place is known; otherwise the list is empty.
@see ITU-R BS.2051-1, sign conventions.
*/
export function sightlines(result: NetworkResult, seat: string): Sightline[] {
	const ear = result.points.findIndex(point => point.id === seat);
	if (ear < 0 || !isKnown(result.points[ear]!)) return [];
	const ahead = aheadOf(result);
	return result.points.flatMap((point, index): Sightline[] => {
		if (point.kind === 'seat' || !isKnown(point)) return [];
		const azimuth = (state: Float64Array) =>
			wrapDegrees(directionOf(from(state, ear, index)).azimuthDegrees - aheadDegrees(state, ear, ahead));
		return [
			{
				id: point.id,
				seat,
				azimuthDegrees: propagate(result, [ear, index, ...ahead.points], azimuth, {isAngle: true}),
				elevationDegrees: propagate(
					result,
					[ear, index],
					state => directionOf(from(state, ear, index)).elevationDegrees,
				),
				distanceMetres: propagate(result, [ear, index], state => Math.hypot(...from(state, ear, index))),
			},
		];
	});
}
