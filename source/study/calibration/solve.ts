import {channelLatency, subLatency} from '../../profile/ask/latency.ts';
import {mainChannels} from '../../profile/ask/lines.ts';
import {observe} from '../../profile/ask/readings.ts';
import {referenceSeat} from '../../profile/ask/seats.ts';
import {processorOf, subsByFeed, subsOf} from '../../profile/ask/subs.ts';
import {usualMainsBand, usualTargetDb} from '../../profile/practice.ts';
import type {ChannelId, Profile} from '../../profile/types.ts';
import {speedOfSound} from '../../science/acoustics/air.ts';
import {suggestedHertz} from './blend/blendInputs.ts';
import {blendRemarks} from './blend/blendRemarks.ts';
import {polarities} from './blend/polarities.ts';
import {blendWish, withoutWish} from './blend/wish.ts';
import {channelRemarks} from './channelRemarks.ts';
import {crossoversOf} from './crossoverMemory.ts';
import {generalRemarks} from './generalRemarks.ts';
import type {LevelFinding} from './levels/facts.ts';
import {levelContext} from './levels/levelContext.ts';
import {levelOverSeats, levelSeats} from './levels/levelSeats.ts';
import type {SeatLevel} from './levels/levels.ts';
import {subLevels} from './levels/subs.ts';
import {trims} from './levels/trims.ts';
import {missingReadings, missingRemarks} from './readings/missing.ts';
import type {Solution} from './result.ts';
import {adjustedDistances} from './timing/adjustedDistances.ts';
import {arrivalOf, timing} from './timing/delays.ts';
import {type AdjustedDistances, type MeasuredDistance, measuredDistance} from './timing/distances.ts';
import type {Arrival} from './timing/result.ts';

/**
Everything to dial in, from everything measured: timing, trims, crossovers and polarity, each as computed and as the
boxes take it, with its uncertainty and its reasons in words. What was not measured is left out and said.

@param adjusted - Distances from all tape readings together, used where they are surer than a direct reading; an empty
map leaves every distance to its own readings.
*/
export function solve(profile: Profile, adjusted: AdjustedDistances = adjustedDistances(profile)): Solution {
	const seat = referenceSeat(profile);
	const observations = observe(profile);
	const air = speedOfSound(profile.air);
	const mains = mainChannels(profile);
	const subs = subsOf(profile);

	const distances = new Map<string, MeasuredDistance>();
	const arrivals = new Map<string, Arrival>();
	const measure = (id: string, latencies: Arrival['latencies']) => {
		const found = measuredDistance(profile, observations, seat.id, id, adjusted);
		if (!found) return;
		distances.set(id, found);
		arrivals.set(id, arrivalOf(id, found.distance, latencies, air.metresPerSecond));
	};

	for (const {id} of mains) measure(id, channelLatency(profile, id));
	for (const sub of subs) measure(sub.id, subLatency(profile, sub));
	const arrivalsMs = new Map([...arrivals].map(([id, {value}]) => [id, value]));
	const wish = blendWish({profile, arrivalsMs, suggestedHertz: suggestedHertz(profile)});
	const polarity = polarities(profile, wish);
	const timed = timing(profile, withoutWish(arrivals, wish), air.sigma / air.metresPerSecond);

	const context = levelContext(profile, observations);
	const sources = [...mains, ...subs].map(({id}) => id);
	const seats = levelSeats(profile, observations, sources);
	const targetDb = profile.target?.levelDb ?? usualTargetDb;
	const levels = new Map<string, SeatLevel>();
	const levelRemarks = new Map<string, readonly LevelFinding[]>();
	for (const {id} of mains) {
		const found = levelOverSeats(context, seats, id, usualMainsBand);
		levelRemarks.set(id, found.remarks);
		if (found.level) levels.set(id, found.level);
	}

	const bass = subLevels(
		context,
		seats,
		targetDb + (profile.target?.subOffsetDb ?? 0),
		arrivalsMs,
		wish?.subs,
	);
	const trimmed = trims(profile, levels, bass.needs, targetDb);
	const crossovers = crossoversOf(profile);
	const missing = missingReadings(profile, observations, distances);
	const feeds = subsByFeed(profile);
	const told = {profile, arrivals, timed, levels, trimmed, targetDb, air, crossovers};

	const ids = [...new Set<ChannelId>([...profile.channels.map(({id}) => id), ...feeds.keys()])];
	const uncertain = (id: string) => {
		const arrival = arrivals.get(id);
		return arrival && {value: arrival.value, sigma: arrival.sigma};
	};

	return {
		seat: seat.id,
		levelSeats: seats.map(({id}) => id),
		speedOfSound: {metresPerSecond: air.metresPerSecond, formula: air.formula, sigma: air.sigma},
		channels: ids.map(id => {
			const polarityInverted = polarity.ofChannel(id);
			const crossoverHertz = crossovers.channels.get(id)?.hertz;
			return defined({
				id,
				distance: distances.get(id)?.distance,
				arrivalMs: uncertain(id),
				timing: timed.channels.get(id),
				level: levels.get(id) && levelResult(levels.get(id)!),
				trimDb: trimmed?.channels.get(id),
				crossoverHertz,
				polarityInverted,
				remarks: [
					...missingRemarks(mains.some(main => main.id === id) ? missing : [], id, false),
					...(distances.get(id)?.remarks ?? []),
					...(levelRemarks.get(id) ?? []),
					...channelRemarks(told, id),
				],
			});
		}),
		subs: subs.map(sub => {
			const level = bass.levels.get(sub.id);
			return defined({
				id: sub.id,
				fedBy: sub.fedBy,
				output: processorOf(profile, sub) && sub.processorOutput,
				distance: distances.get(sub.id)?.distance,
				arrivalMs: uncertain(sub.id),
				level: level && levelResult(level),
				remarks: [
					...missingRemarks(missing, sub.id, true),
					...(distances.get(sub.id)?.remarks ?? []),
					...(bass.remarks.get(sub.id) ?? []),
				],
			});
		}),
		outputs: [...feeds.values()].flatMap(byOutput =>
			[...byOutput].flatMap(([id, fed]) =>
				id === ''
					? []
					: defined({
							id,
							subs: fed,
							delayMs: timed.outputs.get(id),
							gainDb: trimmed?.outputs.get(id),
							polarityInverted: polarity.ofOutput(id),
							remarks: [],
						}),
			),
		),
		...defined({
			lfeLowPassHertz: crossovers.lfeLowPassHertz,
			masterVolumeChangeDb: trimmed?.masterVolumeChangeDb,
			masterVolumeDb:
				trimmed && context.usualMasterDb !== undefined
					? context.usualMasterDb + trimmed.masterVolumeChangeDb
					: undefined,
			worstTimingErrorMs: arrivals.size > 0 ? timed.worstErrorMs : undefined,
			worstLevelErrorDb: trimmed?.worstErrorDb,
		}),
		remarks: [
			...generalRemarks(profile, observations, {
				hasArrivals: arrivals.size > 0,
				hasLevels: trimmed !== undefined,
			}),
			...timed.remarks,
			...blendRemarks(profile, wish, polarity.atSubs),
			...bass.common,
			...(trimmed?.remarks ?? []),
			...crossovers.remarks.filter(({code}) => code !== 'crossover-below-limit'),
		],
	};
}

function levelResult(level: SeatLevel) {
	const {decibels, sigmaDb, repeats, spreadDb, backgroundCorrectionDb, weightingCorrectionDb} = level;
	return {decibels, sigmaDb, repeats, spreadDb, backgroundCorrectionDb, weightingCorrectionDb};
}

/** Without the keys that hold nothing, so that a solution reads the same in memory and in JSON. */
function defined<Type extends object>(value: Type): Type {
	return Object.fromEntries(Object.entries(value).filter(([, entry]) => entry !== undefined)) as Type;
}
