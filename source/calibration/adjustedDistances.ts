import {adjustNetwork} from '../placement/network/adjust.ts';
import type {Profile} from '../profile/types.ts';
import type {AdjustedDistances} from './distances.ts';
import {referenceSeat, tapeKey} from './observations.ts';

/**
Distances from every speaker and sub to the reference seat as all tape readings together give them.

The adjustment of a whole room takes far longer than a solution, so `solve` does not ask for it by itself: pass the
result where its gain counts, such as a distance that was not read directly.

@returns By `tapeKey`; only points that the readings determine. A distance whose direct reading is suspected of a
blunder is marked so and is not used.
*/
export function adjustedDistances(profile: Profile): AdjustedDistances {
	const {points, covariance, readings} = adjustNetwork(profile);
	const seatId = referenceSeat(profile).id;
	const seatIndex = points.findIndex(({id}) => id === seatId);
	const seat = points[seatIndex];
	const found = new Map<string, {metres: number; sigmaMetres: number; isSuspected: boolean}>();
	if (seat?.status !== 'determined') return found;
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
