import {subLatency, totalLatency} from '../../../profile/ask/latency.ts';
import {observe} from '../../../profile/ask/readings.ts';
import {referenceSeat} from '../../../profile/ask/seats.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import type {Profile} from '../../../profile/types.ts';
import {speedOfSound} from '../../../science/acoustics/air.ts';
import {holdingOf} from '../../survey/holding.ts';
import {measuredDistance} from '../timing/distances.ts';

/** Arrival of each sub whose distance was measured, at the reference seat, without any delay dialled in, ms. */
export function subArrivals(profile: Profile): ReadonlyMap<string, number> {
	const seat = referenceSeat(profile).id;
	const read = {observations: observe(profile), holding: holdingOf(profile)};
	const {metresPerSecond} = speedOfSound(profile.air);
	return new Map(
		subsOf(profile).flatMap(sub => {
			const found = measuredDistance(read, seat, sub.id);
			if (!found) return [];
			const flightMs = (1000 * found.distance.metres) / metresPerSecond;
			return [[sub.id, flightMs + totalLatency(subLatency(profile, sub))] as const];
		}),
	);
}
