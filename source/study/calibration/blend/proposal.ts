import type {Profile} from '../../../profile/types.ts';
import {reachOf} from './actions.ts';
import {bestOffset, type FrontSums, gainSigmaDb, meanLevelDb, type Offset} from './bestState.ts';
import type {Collected} from './collected.ts';
import {isSameOffset} from './offset.ts';
import {offsetWith, searchOffsets} from './planned.ts';
import type {Estimate} from './toneSum.ts';
import {fitToneSum} from './toneSum.ts';

/** A setting that the readings speak for, and what it should gain against another. */
export type Proposal = Offset & {readonly gainDb?: Estimate};

/** The tones that are told at every delay, by front. */
export function sumsOf({sums}: Collected): FrontSums {
	return new Map(
		[...sums].map(([front, tones]) => [
			front,
			[...tones].flatMap(([hertz, readings]) => fitToneSum(hertz, readings) ?? []),
		]),
	);
}

/** The loudest setting by the tones, against the one that stands. */
export function bestOfTones(
	profile: Profile,
	{set, subs, stands, periodMs}: Collected,
	sums: FrontSums,
	current: Offset,
): Proposal | undefined {
	if (![...sums.values()].some(tones => tones.length > 0)) return undefined;
	const {lowMs, highMs, stepMs} = reachOf(profile, set, subs);
	const isReached = (laterMs: number) =>
		laterMs - stands.laterMs >= lowMs - stepMs / 2 && laterMs - stands.laterMs <= highMs + stepMs / 2;
	// Beyond three quarters of a period the same phase at the crossover only comes again, later.
	return bestOffset(sums, current, 0.75 * periodMs, stepMs, isReached);
}

/** What the tones say of one setting against another. */
export function gainAt(sums: FrontSums, from: Offset, to: Offset): Estimate {
	return {value: meanLevelDb(sums, to) - meanLevelDb(sums, from), sigma: gainSigmaDb(sums, from, to)};
}

/** Levels of the search in the order of its settings; the latest reading of each counts. */
export function searchLevels(profile: Profile, collected: Collected): Array<Offset & {levelDb?: number}> {
	const {noise, tolerances} = collected;
	return searchOffsets(profile, collected).map(added => {
		const offset = offsetWith(collected, added);
		const read = noise.findLast(
			reading => reading.isSearch && isSameOffset(reading.offset, offset, tolerances),
		);
		return {...offset, ...(read && {levelDb: read.levelDb})};
	});
}

/** The loudest of the search against what stands, its first. */
export function loudestOf(
	levels: ReadonlyArray<Offset & {readonly levelDb?: number}>,
	sigmaDb: number,
): Proposal | undefined {
	const [first] = levels;
	if (!first || levels.some(({levelDb}) => levelDb === undefined)) return undefined;
	const loudest = levels.reduce((best, each) => (each.levelDb! > best.levelDb! ? each : best));
	const {laterMs, inverted} = loudest;
	return {
		laterMs,
		inverted,
		gainDb: {value: loudest.levelDb! - first.levelDb!, sigma: sigmaDb * Math.SQRT2},
	};
}

/** Whether two settings make nearly the same of a tone at the crossover: alike, or turned and half a period apart. */
export function isSoundingAlike(one: Offset, other: Offset, periodMs: number): boolean {
	const apart = Math.abs(one.laterMs - other.laterMs) / periodMs;
	return one.inverted === other.inverted ? apart < 1 / 6 : Math.abs(apart - 1 / 2) < 1 / 8;
}
