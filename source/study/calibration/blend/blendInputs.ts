import {channelLatency, subLatency, totalLatency} from '../../../profile/ask/latency.ts';
import {mainChannels} from '../../../profile/ask/lines.ts';
import {observe} from '../../../profile/ask/readings.ts';
import {referenceSeat} from '../../../profile/ask/seats.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import type {Profile} from '../../../profile/types.ts';
import {speedOfSound} from '../../../science/acoustics/air.ts';
import {crossoversOf} from '../crossoverMemory.ts';
import {adjustedDistances} from '../timing/adjustedDistances.ts';
import {type AdjustedDistances, measuredDistance} from '../timing/distances.ts';
import type {BlendInputs} from './inputs.ts';

/** What the blend is computed from, found in a profile. */
export function blendInputs(
	profile: Profile,
	adjusted: AdjustedDistances = adjustedDistances(profile),
): BlendInputs {
	const seat = referenceSeat(profile).id;
	const observations = observe(profile);
	const {metresPerSecond} = speedOfSound(profile.air);
	const lines = [
		...mainChannels(profile).map(({id}) => ({id: id as string, latencies: channelLatency(profile, id)})),
		...subsOf(profile).map(sub => ({id: sub.id, latencies: subLatency(profile, sub)})),
	];
	return {
		profile,
		arrivalsMs: new Map(
			lines.flatMap(({id, latencies}) => {
				const found = measuredDistance(profile, observations, seat, id, adjusted);
				if (!found) return [];
				return [[id, (1000 * found.distance.metres) / metresPerSecond + totalLatency(latencies)] as const];
			}),
		),
		suggestedHertz: suggestedHertz(profile),
	};
}

/** Crossover of each channel as suggested. */
export function suggestedHertz(profile: Profile): BlendInputs['suggestedHertz'] {
	return new Map(
		[...crossoversOf(profile).channels].flatMap(([id, {hertz}]) =>
			hertz === undefined ? [] : [[id as string, hertz] as const],
		),
	);
}
