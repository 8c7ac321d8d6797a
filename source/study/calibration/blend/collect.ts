import {receiverOf, timingControl} from '../../../profile/ask/boxes.ts';
import {type SetInForce, standingSettings} from '../../../profile/ask/settings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import type {Profile} from '../../../profile/types.ts';
import {type BlendReading, blendReadings} from './blendReadings.ts';
import {type BlendInputs, centreOf, commonHertz, frontsOf, isBlended} from './inputs.ts';
import type {OffsetTolerances, SubsOffset} from './offset.ts';
import {plainOffset} from './plainOffset.ts';
import {isPlaced, isSameRelation, type Relation, type SubsState, statesOf} from './subsState.ts';
import type {SumReading} from './toneSum.ts';
import {tonesToRead} from './tonesOf.ts';

/** A front speaker with a crossover, and its tones. */
export type Front = {readonly id: string; readonly crossoverHertz: number; readonly tones: readonly number[]};

/** Noise of all fronts at once, or of the centre alone, each with all subs. */
export type NoiseReading = {
	readonly what: 'fronts' | 'centre';
	readonly offset: SubsOffset;
	readonly levelDb: number;
	readonly sigmaDb: number;
	readonly isSearch: boolean;
	readonly index: number;
};

export type Collected = {
	readonly fronts: readonly Front[];
	readonly centre: string | undefined;
	readonly subs: readonly string[];
	/** Of the fronts together, hertz. */
	readonly crossoverHertz: number;
	readonly periodMs: number;
	/** The set that stands in the boxes, and what it makes of the subs. */
	readonly set: SetInForce | undefined;
	readonly state: SubsState;
	readonly stands: SubsOffset;
	/** Whether distances tell how the subs should stand to each other; else the set does. */
	readonly isPlaced: boolean;
	/** How the subs should stand to each other. */
	readonly relation: Relation;
	/** What distances and the room's wiring give without any blend. */
	readonly plain: SubsOffset;
	readonly tolerances: OffsetTolerances;
	/** By front, then by tone in hertz. */
	readonly sums: ReadonlyMap<string, ReadonlyMap<number, readonly SumReading[]>>;
	readonly noise: readonly NoiseReading[];
	/** Places of readings that do not count: subs stood otherwise to each other; tones with another crossover or balance; in the background. */
	readonly otherRelation: readonly number[];
	readonly otherSettings: readonly number[];
	readonly drowned: readonly number[];
	/** Places of tones of a front with some subs only, or with some of them turned. */
	readonly partly: readonly number[];
};

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
	const {profile, suggestedHertz} = inputs;
	const {readings, drowned, partly: partlyTurned} = blendReadings(profile);
	const set = standingSet(profile, readings);
	const ids = frontsOf(profile);
	const stateOf = statesOf(inputs, ids);
	const state = stateOf(set);
	const placed = isPlaced(inputs, ids);
	const plain = plainOffset(inputs, ids);
	const relation = placed ? plain.relation : state.relation;
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

	const sums = new Map<string, Map<number, SumReading[]>>();
	const otherRelation: number[] = [];
	const otherSettings: number[] = [];
	const partly = [...partlyTurned];
	const noise: NoiseReading[] = [];
	for (const reading of readings) {
		if (!isBoth(reading)) {
			if (reading.signal.kind === 'tone' && reading.sounding.mains.length > 0) partly.push(reading.index);
			continue;
		}

		const {signal, sounding, index, sigmaDb, isTurned, addedMs, isSearch} = reading;
		const at = reading.set ? stateOf(reading.set) : state;
		const levelDb = reading.levelDb - louderDb(at);
		const inverted = at.inverted !== isTurned;
		const isRelated = isSameRelation(at.relation, relation, tolerances.apartMs);
		if (signal.kind === 'tone') {
			const front = fronts.find(({id}) => isOnly(reading, id));
			if (!front) continue;
			if (!isRelated) otherRelation.push(index);
			else if (!isAlike(at, state, front.id, crossoverOf(front.id))) otherSettings.push(index);
			else {
				const tones = sums.get(front.id) ?? new Map<number, SumReading[]>();
				sums.set(front.id, tones);
				const laterMs = at.laterMs.get(front.id)! + addedMs;
				const sum = {laterMs, inverted, levelDb, sigmaDb, index};
				tones.set(signal.hertz, [...(tones.get(signal.hertz) ?? []), sum]);
			}
		} else {
			const what = whatSounds(sounding.mains, fronts);
			if (!what) continue;
			// What was louder with one sub mistyped would else be verified together with the mistake.
			if (!isRelated) {
				otherRelation.push(index);
				continue;
			}

			const offset = {laterMs: at.meanLaterMs + addedMs, inverted, relation: at.relation};
			noise.push({what, offset, levelDb, sigmaDb, isSearch, index});
		}
	}

	return {
		fronts,
		centre: centreOf(fronts.map(({id}) => id)),
		subs,
		crossoverHertz,
		periodMs: 1000 / crossoverHertz,
		set,
		state,
		stands: {laterMs: state.meanLaterMs, inverted: state.inverted, relation: state.relation},
		isPlaced: placed,
		relation,
		plain,
		tolerances,
		sums,
		noise,
		otherRelation,
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

/** Where there is one front only, its noise is both. */
function whatSounds(mains: readonly string[], fronts: readonly Front[]): NoiseReading['what'] | undefined {
	const centre = centreOf(fronts.map(({id}) => id));
	if (mains.length === fronts.length && fronts.every(({id}) => mains.includes(id)))
		return fronts.length === 1 ? 'centre' : 'fronts';
	return mains.length === 1 && mains[0] === centre ? 'centre' : undefined;
}
