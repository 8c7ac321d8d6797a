import {type BassFigures, bassFigures} from '../room/bass.ts';
import {badCase} from './draws.ts';
import {type BassField, togetherDb} from './field.ts';
import {type SubSetting, turnOf} from './subSetting.ts';

/** An arrangement's bass in all draws: each figure by draw. */
export type JudgedBass = {
	/** Figures in each draw, in the order of the draws. */
	readonly draws: readonly BassFigures[];
	/** Figures of the draw in the middle of the ranking: a hole has no mean. */
	readonly middle: BassFigures;
	/** Mean over the draws of what arrangements are ranked by, dB: spread between seats, or flatness where there is one seat. */
	readonly meanDb: number;
	/** The 18th of 20 draws from good to bad, dB: the bad case. */
	readonly badDb: number;
};

/** What arrangements are ranked by: how much seats differ; with a single seat how uneven it is. */
export function rankedDb({spreadDb, flatnessDb}: BassFigures, seats: number): number {
	return seats > 1 ? spreadDb : flatnessDb;
}

/** Levels of all sources of the fields together, with settings: by draw, receiver and frequency, dB. */
export function levelsInDraws(
	fields: readonly BassField[],
	settings: readonly SubSetting[],
): ReadonlyArray<ReadonlyArray<readonly number[]>> {
	const turns = settings.map(setting => turnOf(fields[0]!.frequenciesHertz, setting));
	return fields.map(field => togetherDb(field, turns));
}

/** Judges all sources of the fields with their settings, in every draw, at all receivers, the reference seat first. */
export const judgeBass = (fields: readonly BassField[], settings: readonly SubSetting[]): JudgedBass =>
	judgeLevels(fields[0]!.frequenciesHertz, levelsInDraws(fields, settings));

/** The same from the levels in every draw. */
export function judgeLevels(
	frequenciesHertz: readonly number[],
	levels: ReturnType<typeof levelsInDraws>,
): JudgedBass {
	const seats = levels[0]!.length;
	const draws = levels.map(seatLevels => bassFigures(frequenciesHertz, seatLevels));
	const ranked = draws.map(figures => rankedDb(figures, seats));
	return {
		draws,
		middle: draws.toSorted((a, b) => rankedDb(a, seats) - rankedDb(b, seats))[Math.floor(draws.length / 2)]!,
		meanDb: ranked.reduce((sum, value) => sum + value, 0) / ranked.length,
		badDb: ranked.toSorted((a, b) => a - b)[Math.min(badCase, ranked.length - 1)]!,
	};
}

/** Whether one arrangement is better than another, by how much, and whether the draws agree on it. */
export type Comparison = {
	readonly gainDb: number;
	/** `sure`: at least 18 of 20 draws say so and it can be told; `none`: too little to be told; else `unclear`. */
	readonly certainty: 'sure' | 'unclear' | 'none';
};

/** Less than this between two arrangements is no difference that anyone hears or that the model tells, dB. Tried in simulated rooms. */
export const tellDb = 0.2;

/** How much better `after` is than `before`, draw by draw. */
export function compareBass(before: JudgedBass, after: JudgedBass, seats: number): Comparison {
	const gains = after.draws.map((figures, i) => rankedDb(before.draws[i]!, seats) - rankedDb(figures, seats));
	const gainDb = gains.reduce((sum, gain) => sum + gain, 0) / gains.length;
	if (Math.abs(gainDb) < tellDb) return {gainDb, certainty: 'none'};
	const agreeing = gains.filter(gain => Math.sign(gain) === Math.sign(gainDb)).length;
	return {gainDb, certainty: agreeing / gains.length >= 0.9 ? 'sure' : 'unclear'};
}
