import {tapeKey} from '../../../profile/ask/readings.ts';
import type {NetworkResult} from '../../survey/result.ts';
import type {AdjustedDistances} from './distances.ts';

/**
Distances from every speaker and sub to a seat as all tape readings together give them.

@param survey - The adjusted network; without one there are none.
@returns By `tapeKey`; only points that the readings determine. A distance whose direct reading is suspected of a
blunder is marked so and is not used.
*/
export function networkDistances(survey: NetworkResult | undefined, seatId: string): AdjustedDistances {
	if (!survey) return new Map();
	const {points, covariance, readings, conventions} = survey;
	const seatIndex = points.findIndex(({id}) => id === seatId);
	const seat = points[seatIndex];
	const found = new Map<string, {metres: number; sigmaMetres: number; isSuspected: boolean}>();
	// Without walls the readings between things are all there is, and the mean of the repeats says as much.
	if (seat?.status !== 'determined' || conventions.length > 0) return found;
	const suspected = new Set(
		readings
			.filter(({status, from, to}) => status === 'suspect' && (from === seatId || to === seatId))
			.map(({from, to}) => (from === seatId ? to : from)),
	);
	for (const [index, {id, kind, at, status}] of points.entries()) {
		if (index === seatIndex || kind === 'seat' || kind === 'screen' || status !== 'determined') continue;
		const along = at.map((coordinate, axis) => coordinate - seat.at[axis]!);
		const metres = Math.hypot(...along);
		if (metres === 0) continue;
		const direction = along.map(component => component / metres);
		let variance = 0;
		for (const [row, a] of direction.entries()) {
			for (const [column, b] of direction.entries()) {
				const entry = (from: number, to: number) =>
					covariance.values[(3 * from + row) * covariance.size + 3 * to + column]!;
				variance += a * b * (entry(index, index) + entry(seatIndex, seatIndex) - 2 * entry(index, seatIndex));
			}
		}

		const sigmaMetres = Math.sqrt(Math.max(0, variance));
		found.set(tapeKey(seatId, id), {metres, sigmaMetres, isSuspected: suspected.has(id)});
	}

	return found;
}
