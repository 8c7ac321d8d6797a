import {isOverhead} from '../../profile/channels.ts';
import type {NetworkResult} from '../survey/result.ts';
import {outsideBy} from '../survey/roomSize.ts';
import {add, distance, dot, length, scale, subtract, type Vector} from '../survey/vectors.ts';
import {aheadDegrees, aheadOf} from './angles.ts';
import type {Correction} from './corrections.ts';
import {stateOf} from './propagate.ts';
import type {PairSymmetry} from './symmetry.ts';

/** A place mirrored in the upright plane through the ear and the screen's centre. */
function mirroredAt(result: NetworkResult, ear: number, at: Vector): Vector {
	const angle = (aheadDegrees(stateOf(result), ear, aheadOf(result)) * Math.PI) / 180;
	const across: Vector = [Math.cos(angle), -Math.sin(angle), 0];
	const origin = result.points[ear]!.at;
	return add(at, scale(across, -2 * dot(subtract(at, origin), across)));
}

/**
The move of one speaker of a pair that makes it the mirror image of the other, seen from the reference seat.

The right one is moved to the left one's image, or the other way round where the right one is fixed or its image would
be outside the room. Overheads keep their height: the ceiling gives it.

@returns Undefined where only delays and trims are needed, or neither can be moved.
*/
export function pairCorrection(
	result: NetworkResult,
	pair: PairSymmetry,
	seat: string,
): Correction | undefined {
	const uneven = pair.differences.filter(({repair}) => repair === 'only moving');
	const isAbove = isOverhead(pair.left);
	const ear = result.points.findIndex(({id}) => id === seat);
	if (ear < 0 || !uneven.some(({what}) => what === 'azimuth' || (!isAbove && what !== 'side wall')))
		return undefined;
	for (const [kept, moves] of [
		[pair.left, pair.right],
		[pair.right, pair.left],
	] as const) {
		const model = result.points.find(({id}) => id === kept)!;
		const point = result.points.find(({id}) => id === moves)!;
		const image = mirroredAt(result, ear, model.at);
		const to: Vector = isAbove ? [image[0], image[1], point.at[2]] : image;
		if (point.isFixed || (result.conventions.length === 0 && outsideBy(result.room, to) > 0)) continue;
		const by = subtract(to, point.at);
		return {
			id: moves,
			moves,
			by,
			sizeMetres: length(by),
			to,
			toSeatMetres: distance(to, result.points[ear]!.at),
			repairs: ['azimuth'],
		};
	}

	return undefined;
}
