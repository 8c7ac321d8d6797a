import {seatClearanceMetres} from '../../profile/practice.ts';
import type {NetworkResult} from '../survey/result.ts';
import {outsideBy} from '../survey/roomSize.ts';
import {add, distance, type Vector} from '../survey/vectors.ts';
import {isKnown} from './angles.ts';
import {type Correction, wanted} from './corrections.ts';
import type {ChannelJudgement} from './judge.ts';

/**
The move of the reference seat, towards the screen or away from it, that brings both front speakers to the angle that
they miss in the same sense.

@returns Undefined where the fronts are right, miss in opposite senses, or the room has no place for such a move.
*/
export function seatCorrection(
	result: NetworkResult,
	judgements: readonly ChannelJudgement[],
	seat: string,
): Correction | undefined {
	const ear = result.points.find(({id}) => id === seat);
	const sides = ['FL', 'FR'].map(id => ({
		point: result.points.find(one => one.id === id),
		azimuth: judgements.find(one => one.id === id)?.azimuth,
	}));
	const [left, right] = sides;
	if (!ear || !left?.point || !right?.point || !left.azimuth || !right.azimuth) return undefined;
	if (!isKnown(ear) || left.azimuth.excessDegrees === 0 || right.azimuth.excessDegrees === 0)
		return undefined;
	// Too wide on the left is a positive deviation, on the right a negative one.
	if (Math.sign(left.azimuth.deviationDegrees) === Math.sign(right.azimuth.deviationDegrees))
		return undefined;
	const angle = ((wanted(left.azimuth) - wanted(right.azimuth)) / 2) * (Math.PI / 180);
	const half = (right.point.at[0] - left.point.at[0]) / 2;
	const away = ear.at[1] - (left.point.at[1] + right.point.at[1]) / 2;
	const by: Vector = [0, half / Math.tan(angle) - away, 0];
	const to = add(ear.at, by);
	const isInside = [-seatClearanceMetres, seatClearanceMetres].every(
		step => outsideBy(result.room, add(to, [0, step, 0])) === 0,
	);
	if (!isInside || half / Math.tan(angle) < 0.5) return undefined;
	return {
		id: 'FL',
		moves: seat,
		by,
		sizeMetres: Math.abs(by[1]),
		to,
		toSeatMetres: distance(to, left.point.at),
		repairs: ['azimuth'],
	};
}
