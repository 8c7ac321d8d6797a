import {tapeKey} from '../../../profile/ask/readings.ts';
import {referenceSeat} from '../../../profile/ask/seats.ts';
import type {Profile} from '../../../profile/types.ts';
import {adjustNetwork} from '../../survey/adjust.ts';
import type {AdjustedDistances} from './distances.ts';

/** What the adjustment depends on; readings of level and everything else leave it as it is. */
const inputs = ['tape', 'seats', 'channels', 'subs', 'room', 'kit'] as const;
/** The last rooms adjusted: the one on screen, the one before it, and one for undo or comparison. */
const remembered: Array<{readonly profile: Profile; readonly distances: AdjustedDistances}> = [];
const mostRemembered = 4;
/**
Distances from every speaker and sub to the reference seat as all tape readings together give them.

The adjustment of a whole room takes far longer than the rest of a solution, so that it is made once for as long as the
tape readings and what they are taken to stay the same objects.

@returns By `tapeKey`; only points that the readings determine. A distance whose direct reading is suspected of a
blunder is marked so and is not used.
*/
export function adjustedDistances(profile: Profile): AdjustedDistances {
	const known = remembered.find(one => inputs.every(key => one.profile[key] === profile[key]));
	if (known) return known.distances;
	const distances = distancesOf(profile);
	remembered.unshift({profile, distances});
	remembered.length = Math.min(remembered.length, mostRemembered);
	return distances;
}

function distancesOf(profile: Profile): AdjustedDistances {
	const {points, covariance, readings, conventions} = adjustNetwork(profile);
	const seatId = referenceSeat(profile).id;
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
