import {processorOf} from '../../profile/ask/subs.ts';
import type {ChannelId} from '../../profile/types.ts';
import type {Bench} from './bench.ts';
import {blendRemarks} from './blend/blendRemarks.ts';
import {channelRemarks} from './channelRemarks.ts';
import {generalRemarks} from './generalRemarks.ts';
import type {SeatLevel} from './levels/levels.ts';
import {type Missing, missingReadings, missingRemarks} from './readings/missing.ts';
import type {ChannelSolution, LevelResult, OutputSolution, Solution, SubSolution} from './result.ts';
import type {Worked} from './worked.ts';

/** Everything that was worked out, by channel, sub and output, with its reasons. */
export function assembled(bench: Bench, worked: Worked): Solution {
	const {profile, observations, air, crossovers, seat, feeds} = bench;
	const {arrivals, distances, timed, levels, trimmed} = worked;
	const missing = missingReadings(profile, observations, distances);
	const ids = [...new Set<ChannelId>([...profile.channels.map(({id}) => id), ...feeds.keys()])];
	const masterVolumeDb =
		trimmed && levels.usualMasterDb !== undefined
			? levels.usualMasterDb + trimmed.masterVolumeTurnDb
			: undefined;
	return {
		seat: seat.id,
		levelSeats: levels.seats,
		speedOfSound: {metresPerSecond: air.metresPerSecond, formula: air.formula, sigma: air.sigma},
		channels: ids.map(id => channelSolution(bench, worked, missing, id)),
		subs: bench.subs.map(({id}) => subSolution(bench, worked, missing, id)),
		outputs: outputSolutions(bench, worked),
		...defined({
			lfeLowPassHertz: crossovers.lfeLowPassHertz,
			masterVolumeChangeDb: trimmed?.masterVolumeChangeDb,
			masterVolumeTurnDb: trimmed?.masterVolumeTurnDb,
			masterVolumeDb,
			worstTimingErrorMs: arrivals.size > 0 ? timed.worstErrorMs : undefined,
			worstLevelErrorDb: trimmed?.worstErrorDb,
		}),
		remarks: [
			...generalRemarks(profile, observations, {
				hasArrivals: arrivals.size > 0,
				hasLevels: trimmed !== undefined,
			}),
			...timed.remarks,
			...blendRemarks(profile, worked.wish, worked.polarity.atSubs),
			...levels.subs.common,
			...(trimmed?.remarks ?? []),
			...crossovers.remarks.filter(({code}) => code !== 'crossover-below-limit'),
		],
	};
}

function channelSolution(
	bench: Bench,
	worked: Worked,
	missing: readonly Missing[],
	id: ChannelId,
): ChannelSolution {
	const {distances, timed, levels, trimmed} = worked;
	const isMain = bench.mains.some(main => main.id === id);
	return defined({
		id,
		distance: distances.get(id)?.distance,
		arrivalMs: arrivalMsOf(worked, id),
		timing: timed.channels.get(id),
		level: levelResult(levels.mains.get(id)),
		trimDb: trimmed?.channels.get(id),
		crossoverHertz: bench.crossovers.channels.get(id)?.hertz,
		polarityInverted: worked.polarity.ofChannel(id),
		remarks: [
			...missingRemarks(isMain ? missing : [], id, false),
			...(distances.get(id)?.remarks ?? []),
			...(levels.remarks.get(id) ?? []),
			...channelRemarks(bench, worked, id),
		],
	});
}

function subSolution(bench: Bench, worked: Worked, missing: readonly Missing[], id: string): SubSolution {
	const {distances, levels} = worked;
	const sub = bench.subs.find(one => one.id === id)!;
	return defined({
		id,
		fedBy: sub.fedBy,
		output: processorOf(bench.profile, sub) && sub.processorOutput,
		distance: distances.get(id)?.distance,
		arrivalMs: arrivalMsOf(worked, id),
		level: levelResult(levels.subs.levels.get(id)),
		remarks: [
			...missingRemarks(missing, id, true),
			...(distances.get(id)?.remarks ?? []),
			...(levels.subs.remarks.get(id) ?? []),
		],
	});
}

function outputSolutions({feeds}: Bench, {polarity, timed, trimmed}: Worked): OutputSolution[] {
	return [...feeds.values()].flatMap(byOutput =>
		[...byOutput].flatMap(([id, subs]) =>
			id === ''
				? []
				: defined({
						id,
						subs,
						delayMs: timed.outputs.get(id),
						gainDb: trimmed?.outputs.get(id),
						polarityInverted: polarity.ofOutput(id),
						remarks: [],
					}),
		),
	);
}

function arrivalMsOf({arrivals}: Worked, id: string) {
	const arrival = arrivals.get(id);
	return arrival && {value: arrival.value, sigma: arrival.sigma};
}

function levelResult(level: SeatLevel | undefined): LevelResult | undefined {
	if (!level) return undefined;
	const {decibels, sigmaDb, repeats, spreadDb, backgroundCorrectionDb, weightingCorrectionDb} = level;
	return {decibels, sigmaDb, repeats, spreadDb, backgroundCorrectionDb, weightingCorrectionDb};
}

/** Without the keys that hold nothing, so that a solution reads the same in memory and in JSON. */
function defined<Type extends object>(value: Type): Type {
	return Object.fromEntries(Object.entries(value).filter(([, entry]) => entry !== undefined)) as Type;
}
