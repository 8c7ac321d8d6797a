import {leastGainsDb} from '../../../profile/practice.ts';
import {energyMean} from '../../../science/acoustics/decibels.ts';
import type {Collected} from './collected.ts';
import type {NoiseReading} from './noise.ts';
import {isSameOffset, type OffsetTolerances, type SubsOffset} from './offset.ts';
import {readingsEach, type TrialVerdict} from './verdict.ts';

export type NoiseLevel = {
	readonly levelDb: number;
	readonly count: number;
	/** Places in the profile's list of meter readings. */
	readonly indexes: readonly number[];
};

/** The noise read under one way of setting the subs. */
export type NoiseState = {readonly offset: SubsOffset} & {
	readonly [What in NoiseReading['what']]?: NoiseLevel;
};

/** One way of setting the subs against the one that stood before. */
export type Trial = {
	readonly from: NoiseState;
	readonly to: NoiseState;
	/** Absent where not read before and after, or where there is one front only. */
	readonly frontsGainDb?: number;
	readonly centreGainDb?: number;
	readonly verdict: TrialVerdict;
};

/** The states under which noise was read to verify, in the order in which they were first met. */
export function noiseStates(noise: readonly NoiseReading[], tolerances: OffsetTolerances): NoiseState[] {
	const groups: Array<{offset: SubsOffset; readings: NoiseReading[]}> = [];
	for (const reading of noise) {
		const known = groups.find(({offset}) => isSameOffset(offset, reading.offset, tolerances));
		if (known) known.readings.push(reading);
		else groups.push({offset: reading.offset, readings: [reading]});
	}

	return groups.map(({offset, readings}) => {
		const levelOf = (what: NoiseReading['what']): Partial<NoiseState> => {
			const own = readings.filter(reading => reading.what === what);
			if (own.length === 0) return {};
			const levelDb = energyMean(own.map(reading => reading.levelDb));
			return {[what]: {levelDb, count: own.length, indexes: own.map(({index}) => index)}};
		};
		return {offset, ...levelOf('fronts'), ...levelOf('centre')};
	});
}

/**
Whether a setting is better than the one before: neither softer, and the gains add up.

@param isOneFront - Its noise alone then decides.
*/
export function tried(from: NoiseState, to: NoiseState, isOneFront: boolean): Trial {
	const gain = (what: NoiseReading['what']) => {
		const [before, after] = [from[what], to[what]];
		const isRead = before && after && before.count >= readingsEach && after.count >= readingsEach;
		return isRead ? after.levelDb - before.levelDb : undefined;
	};
	const frontsGainDb = isOneFront ? undefined : gain('fronts');
	const centreGainDb = gain('centre');
	const gains = isOneFront ? [centreGainDb] : [frontsGainDb, centreGainDb];
	const known = gains.filter(each => each !== undefined);
	const least = isOneFront ? leastGainsDb / 2 : leastGainsDb;
	const isKept = known.every(each => each >= 0) && known.reduce((sum, each) => sum + each, 0) >= least;
	return {
		from,
		to,
		...(frontsGainDb !== undefined && {frontsGainDb}),
		...(centreGainDb !== undefined && {centreGainDb}),
		verdict: known.length < gains.length ? 'open' : isKept ? 'kept' : 'put back',
	};
}

/**
The settings verified, one after the other, each against the one kept so far.

@param start - The state that stands where noise was not read first under another.
*/
export function trialsOf(states: readonly NoiseState[], isOneFront: boolean): readonly Trial[] {
	const [first, ...rest] = states;
	if (!first) return [];
	let kept = first;
	return rest.map(state => {
		const trial = tried(kept, state, isOneFront);
		if (trial.verdict === 'kept') kept = state;
		return trial;
	});
}

/** The settings that noise was read under, against each other, and the one that was there first. */
export function trialsIn({noise, tolerances, stands, fronts}: Collected): {
	readonly trials: readonly Trial[];
	readonly start: SubsOffset;
} {
	const states = noiseStates(
		noise.filter(({isSearch}) => !isSearch),
		tolerances,
	);
	return {trials: trialsOf(states, fronts.length === 1), start: states[0]?.offset ?? stands};
}
