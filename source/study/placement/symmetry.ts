import type {Uncertain} from '../../science/numeric/uncertain.ts';
import {oppositeEnd} from '../survey/causes.ts';
import {directionOf, wrapDegrees} from '../survey/directions.ts';
import type {NetworkResult} from '../survey/result.ts';
import type {Vector} from '../survey/vectors.ts';
import {aheadDegrees, aheadOf, isKnown} from './angles.ts';
import {propagate} from './propagate.ts';

/** What can undo a difference between left and right. */
export type Repair = 'delays and trims' | 'only moving' | 'nothing needed';

export type Difference = {
	readonly what: 'azimuth' | 'elevation' | 'distance' | 'height' | 'side wall' | 'front wall';
	/** Left minus right, in degrees or metres. */
	readonly difference: Uncertain;
	readonly unit: 'degrees' | 'metres';
	readonly repair: Repair;
};

export type PairSymmetry = {
	readonly left: string;
	readonly right: string;
	readonly differences: readonly Difference[];
};

/**
Differences that matter less than this need nothing: angles, because hearing does not resolve more off the middle; lengths,
because half a delay step and the placing of a stand are as large. Common practice, no source.
*/
const negligible = {degrees: 2, metres: 0.03} as const;

const repairs: Readonly<Record<Difference['what'], Repair>> = {
	azimuth: 'only moving',
	elevation: 'only moving',
	distance: 'delays and trims',
	height: 'only moving',
	'side wall': 'only moving',
	'front wall': 'only moving',
};

/**
How far each pair is from being mirror images, at one seat: angles, distances, and the walls beside and ahead.

Distance is what delays and trims undo; direction and the reflections of near walls only moving can.

@param seat - Id of the reference seat.
*/
export function symmetry(result: NetworkResult, seat: string): PairSymmetry[] {
	const {points, room} = result;
	const ear = points.findIndex(point => point.id === seat);
	if (ear < 0 || !isKnown(points[ear]!)) return [];
	const ahead = aheadOf(result);
	const hasWalls = result.conventions.length === 0;
	const ray = (state: Float64Array, point: number): Vector => [
		state[point * 3]! - state[ear * 3]!,
		state[point * 3 + 1]! - state[ear * 3 + 1]!,
		state[point * 3 + 2]! - state[ear * 3 + 2]!,
	];
	return points.flatMap((point, left): PairSymmetry[] => {
		const right = points.findIndex(({id}) => id === oppositeEnd(point.id));
		const isLeft = /L[cwd]?$|^LSd?$|^TpLS$/.test(point.id);
		if (point.kind !== 'speaker' || !isLeft || right < 0) return [];
		if (!isKnown(point) || !isKnown(points[right]!)) return [];
		const differences: Difference[] = [];
		const add = (
			what: Difference['what'],
			unit: Difference['unit'],
			value: (state: Float64Array) => number,
		) => {
			const difference = propagate(result, [ear, left, right, ...ahead.points], value, {
				isAngle: unit === 'degrees',
			});
			const size = Math.abs(difference.value);
			const isSmall = size <= Math.max(negligible[unit], 2 * difference.sigma);
			differences.push({what, difference, unit, repair: isSmall ? 'nothing needed' : repairs[what]});
		};
		const azimuth = (state: Float64Array, at: number) =>
			wrapDegrees(directionOf(ray(state, at)).azimuthDegrees - aheadDegrees(state, ear, ahead));
		add('azimuth', 'degrees', state => wrapDegrees(azimuth(state, left) + azimuth(state, right)));
		add(
			'elevation',
			'degrees',
			state =>
				directionOf(ray(state, left)).elevationDegrees - directionOf(ray(state, right)).elevationDegrees,
		);
		add('distance', 'metres', state => Math.hypot(...ray(state, left)) - Math.hypot(...ray(state, right)));
		add('height', 'metres', state => state[left * 3 + 2]! - state[right * 3 + 2]!);
		const {widthMetres} = room;
		if (hasWalls && widthMetres !== undefined) {
			add('side wall', 'metres', state => state[left * 3]! - (widthMetres - state[right * 3]!));
		}

		if (hasWalls) add('front wall', 'metres', state => state[left * 3 + 1]! - state[right * 3 + 1]!);
		return [{left: point.id, right: points[right]!.id, differences}];
	});
}
