import {channelLatency, subLatency} from '../../../profile/ask/latency.ts';
import type {Bench} from '../bench.ts';
import {arrivalOf} from './delays.ts';
import {type MeasuredDistance, measuredDistance} from './distances.ts';
import {heardDistances} from './heardDistances.ts';
import type {Arrival} from './result.ts';

export type Arrivals = {
	/** Distance of each speaker and sub to the reference seat; what was not measured is absent. */
	readonly distances: ReadonlyMap<string, MeasuredDistance>;
	/** When each arrives with no delay dialled in, ms. */
	readonly arrivals: ReadonlyMap<string, Arrival>;
	/** The same without what it came from. */
	readonly arrivalsMs: ReadonlyMap<string, number>;
};

/** How far every speaker and sub is, and when its sound arrives at the reference seat. */
export function arrivalsOf(bench: Bench): Arrivals {
	const {profile, mains, subs, seat, adjusted, air} = bench;
	const distances = new Map<string, MeasuredDistance>();
	const arrivals = new Map<string, Arrival>();
	const lines = [
		...mains.map(({id}) => [id, channelLatency(profile, id)] as const),
		...subs.map(sub => [sub.id, subLatency(profile, sub)] as const),
	];
	for (const [id] of lines) {
		const found = measuredDistance(bench, seat.id, id, adjusted);
		if (found) distances.set(id, found);
	}

	const ids = mains.map(({id}) => id);
	for (const [id, found] of heardDistances(profile, seat.id, ids, distances, air.metresPerSecond))
		distances.set(id, found);
	for (const [id, latencies] of lines) {
		const found = distances.get(id);
		if (!found) continue;
		arrivals.set(id, arrivalOf(id, found.distance, latencies, air.metresPerSecond));
	}

	return {distances, arrivals, arrivalsMs: new Map([...arrivals].map(([id, {value}]) => [id, value]))};
}
