import {receiverOf, timingControl} from '../../../profile/ask/boxes.ts';
import {type SetInForce, standingSettings} from '../../../profile/ask/settings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import type {Profile} from '../../../profile/types.ts';
import {type BlendReading, blendReadings} from './blendReadings.ts';
import type {Collected, Front} from './collected.ts';
import {type BlendInputs, centreOf, commonHertz, frontsOf, isBlended} from './inputs.ts';
import {type NoiseReading, noiseIn, offsetOf, type ReadUnder} from './noise.ts';
import {isSameOffset} from './offset.ts';
import {pairTones} from './pair/pairTones.ts';
import {pairTrialsIn} from './pair/pairTrial.ts';
import {plainOffset} from './plainOffset.ts';
import {
	isPlaced,
	isSameRelation,
	type Relation,
	type SubsState,
	statesOf,
	stateWithChange,
	subLines,
} from './subsState.ts';
import type {SumReading} from './toneSum.ts';
import {tonesToRead} from './tonesOf.ts';

/** What a sub's level may differ from the one that stands: it moves the sum by half, and its phase not at all, dB. */
const mostBalanceDb = 1.5;
/** 0.3 ms turn 100 Hz by 11 degrees, which costs 0.04 dB of two equal sounds in phase. */
const usualToleranceMs = 0.3;

function stepsOf(profile: Profile): {readonly receiverMs: number; readonly processorMs: number} {
	return {
		receiverMs: timingControl(receiverOf(profile).receiver).delay.step,
		processorMs: profile.bassProcessor?.delay.stepMs ?? 0,
	};
}

/** The set that stands: the one told at the stop, else that of the latest reading, else the one decided. */
function standingSet(profile: Profile, readings: readonly BlendReading[]): SetInForce | undefined {
	const told = profile.settings?.find(({id}) => id === profile.walk?.toneSet);
	return told ?? readings.findLast(({set}) => set)?.set ?? standingSettings(profile);
}

/** Gathers everything that the blend is computed from. */
export function collect(inputs: BlendInputs): Collected {
	const read = blendReadings(inputs.profile);
	const collected = collectUnder(inputs, read, standingSet(inputs.profile, read.readings));
	const {pair, stands, tolerances} = collected;
	const decided = standingSettings(inputs.profile);
	if (!pair.kept || inputs.profile.walk?.toneSet !== undefined) return collected;
	// A change between subs that was kept is dialled in before anything else is read under it.
	const isAt = (relation: Relation) => isSameRelation(relation, pair.kept!.to.relation, tolerances.apartMs);
	const isSince =
		!isAt(stands.relation) && isAt(statesOf(inputs, frontsOf(inputs.profile))(decided).relation);
	return isSince ? collectUnder(inputs, read, decided) : collected;
}

/** The same under the set that was decided last, whatever the latest reading was taken with. */
export function collectDecided(inputs: BlendInputs): Collected {
	return collectUnder(inputs, blendReadings(inputs.profile), standingSettings(inputs.profile));
}

function collectUnder(
	inputs: BlendInputs,
	{readings, drowned, partly: partlyTurned}: ReturnType<typeof blendReadings>,
	set: SetInForce | undefined,
): Collected {
	const {profile, suggestedHertz} = inputs;
	const ids = frontsOf(profile);
	const stateOf = statesOf(inputs, ids);
	const state = stateOf(set);
	const placed = isPlaced(inputs, ids);
	const plain = plainOffset(inputs, ids);
	const {receiverMs, processorMs} = stepsOf(profile);
	const tolerances = {
		togetherMs: usualToleranceMs + Math.max(receiverMs, processorMs) / 2,
		apartMs: usualToleranceMs + receiverMs / 2 + processorMs / 2,
	};
	const subs = subsOf(profile).map(({id}) => id);
	const isBoth = ({sounding}: BlendReading) => sounding.subs.length === subs.length;
	const crossoverOf = (id: string) =>
		state.crossovers.get(id) ??
		standingSettings(profile)?.channels[id as 'FC']?.crossoverHertz ??
		suggestedHertz.get(id);
	const fronts = ids.flatMap((id): Front[] => {
		const crossoverHertz = crossoverOf(id);
		if (!isBlended(crossoverHertz)) return [];
		const read = readings.flatMap(reading =>
			reading.signal.kind === 'tone' && isBoth(reading) && isOnly(reading, id) ? [reading.signal.hertz] : [],
		);
		return [{id, crossoverHertz, tones: tonesToRead(crossoverHertz, read)}];
	});
	const crossoverHertz = commonHertz(fronts.map(front => front.crossoverHertz));
	const louderDb = (of: SubsState) =>
		of.masterDb === undefined || state.masterDb === undefined ? 0 : of.masterDb - state.masterDb;

	const lines = subLines(profile, inputs.arrivalsMs);
	const read = readings.map((reading): ReadUnder => {
		const under = reading.set ? stateOf(reading.set) : state;
		return {
			reading,
			set: under,
			played: stateWithChange(under, lines, reading.change),
			louderDb: louderDb(under),
		};
	});
	const frontIds = fronts.map(({id}) => id);
	const noise = noiseIn(read, subs, frontIds);
	const trials = placed ? pairTrialsIn(noise, fronts.length, tolerances) : [];
	const kept = trials.findLast(({verdict}) => verdict === 'kept');
	const relation = !placed ? state.relation : kept ? kept.to.relation : plain.relation;
	const isRelated = (to: Relation) => isSameRelation(to, relation, tolerances.apartMs);
	const isOfPair = ({base, offset}: NoiseReading) =>
		base !== undefined || (kept && isSameOffset(offset, kept.from, tolerances));

	const sums = new Map<string, Map<number, SumReading[]>>();
	// What was louder with one sub mistyped would else be verified together with the mistake.
	const otherRelation = noise
		.filter(each => each.what !== 'lfe' && !isOfPair(each) && !isRelated(each.offset.relation))
		.map(({index}) => index);
	const otherSettings: number[] = [];
	const partly = [...partlyTurned];
	for (const {reading, set: under, played, louderDb: louder} of read) {
		const {signal, sounding, index, sigmaDb} = reading;
		if (signal.kind !== 'tone' || sounding.mains.length === 0) continue;
		if (!isBoth(reading)) {
			partly.push(index);
			continue;
		}

		const front = fronts.find(({id}) => isOnly(reading, id));
		if (!front) continue;
		if (!isRelated(played.relation)) otherRelation.push(index);
		else if (!isAlike(under, state, front.id, crossoverOf(front.id))) otherSettings.push(index);
		else {
			const tones = sums.get(front.id) ?? new Map<number, SumReading[]>();
			sums.set(front.id, tones);
			const {inverted} = played;
			const laterMs = played.laterMs.get(front.id)!;
			const sum = {laterMs, inverted, levelDb: reading.levelDb - louder, sigmaDb, index};
			tones.set(signal.hertz, [...(tones.get(signal.hertz) ?? []), sum]);
		}
	}

	return {
		fronts,
		centre: centreOf(frontIds),
		subs,
		crossoverHertz,
		periodMs: 1000 / crossoverHertz,
		set,
		state,
		stands: offsetOf(state),
		isPlaced: placed,
		relation,
		plain,
		lines,
		pair: {tones: pairTones(read, subs, state), trials, kept},
		tolerances,
		sums,
		noise: noise.filter(each => each.what !== 'lfe' && !each.base && isRelated(each.offset.relation)),
		pairNoise: noise,
		otherRelation: otherRelation.sort((one, other) => one - other),
		otherSettings,
		drowned,
		partly,
	};
}

function isOnly({sounding: {mains}}: BlendReading, id: string): boolean {
	return mains.length === 1 && mains[0] === id;
}

function isAlike(one: SubsState, other: SubsState, front: string, crossover: number | 'full' | undefined) {
	const balance = Math.abs(one.balanceDb.get(front)! - other.balanceDb.get(front)!);
	return (one.crossovers.get(front) ?? crossover) === crossover && balance <= mostBalanceDb;
}
