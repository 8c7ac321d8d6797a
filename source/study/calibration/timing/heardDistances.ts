import {channelLatency, totalLatency} from '../../../profile/ask/latency.ts';
import {effectOf, lineOf} from '../../../profile/ask/lines.ts';
import {settingsInForce} from '../../../profile/ask/settings.ts';
import {finding} from '../../../profile/finding.ts';
import type {ChannelId, Profile} from '../../../profile/types.ts';
import {median} from '../../../science/numeric/statistics.ts';
import type {MeasuredDistance} from './distances.ts';

/** Beyond this, or four sigma, tape and recording do not mean the same, ms: 10 cm. */
const leastOffMs = 0.3;
/** Fewer lines that both tape and recording know do not hold the recording's own zero. */
const leastKnown = 3;

type HeardArrival = {
	readonly id: ChannelId;
	/** Candidates: the first sound, and a later, stronger one; ms, all with one unknown start. */
	readonly candidatesMs: readonly number[];
	readonly sigmaMs: number;
};

/**
Distances with what the newest recording at the seat tells of arrivals: a taped one that agrees is joined with it by weights
of 1/σ², one that was not taped gets its distance from it. What disagrees is left to the tape, and named elsewhere.

@param taped - By channel.
@returns Only what the recording changes.
*/
export function heardDistances(
	profile: Profile,
	seat: string,
	mains: readonly ChannelId[],
	taped: ReadonlyMap<string, MeasuredDistance>,
	metresPerSecond: number,
): ReadonlyMap<string, MeasuredDistance> {
	const heard = heardArrivals(profile, seat, mains);
	const flightMs = (metres: number) => (1000 * metres) / metresPerSecond;
	const latencyOf = (id: ChannelId) => totalLatency(channelLatency(profile, id));
	const known = heard.flatMap(each => {
		const own = taped.get(each.id)?.distance;
		if (!own) return [];
		const tapedMs = flightMs(own.metres) + latencyOf(each.id);
		return [{...each, own, tapedMs, tapedSigmaMs: flightMs(own.sigmaMetres)}];
	});
	if (known.length < leastKnown) return new Map();
	const rough = median(known.map(({candidatesMs, tapedMs}) => candidatesMs[0]! - tapedMs));
	const agreeing = known.flatMap(each => {
		const offsMs = each.candidatesMs.map(ms => ms - each.tapedMs);
		const off = offsMs.reduce((best, ms) => (Math.abs(ms - rough) < Math.abs(best - rough) ? ms : best));
		const variance = each.sigmaMs ** 2 + each.tapedSigmaMs ** 2;
		const isNear = Math.abs(off - rough) <= Math.max(leastOffMs, 4 * Math.sqrt(variance));
		return isNear ? [{...each, off, variance}] : [];
	});
	if (agreeing.length < leastKnown) return new Map();
	const weight = agreeing.reduce((sum, {variance}) => sum + 1 / variance, 0);
	const zero = agreeing.reduce((sum, {off, variance}) => sum + off / variance, 0) / weight;
	const zeroVariance = 1 / weight;
	const result = new Map<string, MeasuredDistance>();
	const metresOf = (ms: number) => (ms * metresPerSecond) / 1000;
	for (const {id, off, own, sigmaMs, tapedSigmaMs} of agreeing) {
		const heardVariance = sigmaMs ** 2 + zeroVariance;
		const share = tapedSigmaMs ** 2 / (tapedSigmaMs ** 2 + heardVariance);
		const metres = own.metres + metresOf(share * (off - zero));
		const sigmaMetres = metresOf(Math.sqrt((1 - share) * tapedSigmaMs ** 2));
		result.set(id, {...taped.get(id)!, distance: {...own, metres, sigmaMetres}});
	}

	for (const {id, candidatesMs, sigmaMs} of heard) {
		const metres = metresOf(candidatesMs[0]! - zero - latencyOf(id));
		if (taped.has(id) || !(metres > 0.2)) continue;
		const sigmaMetres = metresOf(Math.sqrt(sigmaMs ** 2 + zeroVariance));
		result.set(id, {
			distance: {metres, sigmaMetres, from: 'recording', readings: 0},
			remarks: [finding('note', 'distance-from-recording', [id], {metres, sigmaMetres})],
		});
	}

	return result;
}

/** Arrivals of the newest recording at the seat whose settings are known, without the delays that stood. */
function heardArrivals(profile: Profile, seat: string, mains: readonly ChannelId[]): HeardArrival[] {
	const recording = profile.recordings?.findLast(
		each => each.seat === seat && !each.setAside && !each.state && settingsInForce(profile, each),
	);
	if (!recording) return [];
	const set = settingsInForce(profile, recording);
	return mains.flatMap((id): HeardArrival[] => {
		const own = profile.responses?.find(
			each =>
				each.recording === recording.id &&
				each.source === id &&
				(each.part ?? 'all') === 'all' &&
				!each.setAside,
		);
		const {delayMs} = effectOf(profile, set, lineOf(profile, id));
		if (own?.arrivalMs === undefined || delayMs === 'unstated') return [];
		const later = own.laterMs === undefined ? [] : [own.laterMs - delayMs];
		return [
			{id, candidatesMs: [own.arrivalMs - delayMs, ...later], sigmaMs: own.arrivalSigmaMs ?? leastOffMs / 3},
		];
	});
}
