import {joinedName} from '../../../profile/ask/readings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {listed, nameOf} from '../../../profile/names.ts';
import {beyondCoherentDb, usualSubBand} from '../../../profile/practice.ts';
import type {Profile} from '../../../profile/types.ts';
import {coherentSum} from '../../../science/acoustics/decibels.ts';
import {combinedSigma} from '../../../science/numeric/statistics.ts';
import type {Remark} from '../result.ts';
import {inDb, remark} from '../words.ts';
import {levelOverSeats, type WeightedSeat} from './levelSeats.ts';
import type {LevelContext, SeatLevel} from './levels.ts';
import {countingTogether, type SubWish} from './subsTogether.ts';

/** What receiver and processor together should do to the level of one sub. */
export type SubNeed = {readonly id: string; readonly gainDb: number; readonly sigmaDb: number};

export type SubLevels = {
	readonly levels: ReadonlyMap<string, SeatLevel>;
	readonly needs: ReadonlyMap<string, SubNeed>;
	/** By sub. */
	readonly remarks: ReadonlyMap<string, readonly Remark[]>;
	/** About the subs together. */
	readonly common: readonly Remark[];
};

/** How much less than in phase the subs may make before anybody has read them together, standard deviation, dB. Judgement, no source. */
const unreadSigmaDb = 1.5;

/**
What each sub needs: matched to the others singly at the seat, and all together at the subs' target.

Together, n matched subs make 20·lg n dB more than one when they arrive in phase. A reading of all of them together
says what they really make, for the delays and polarities under which it was taken; under others the coherent sum is
assumed until they are read together anew.

@param targetDb - Level of all subs together, dB.
@param arrivalsMs - Of subs at the reference seat without any delay dialled in, ms.
@param wishes - By sub, delay and polarity that were verified on top of what distances give.
*/
export function subLevels(
	context: LevelContext,
	seats: readonly WeightedSeat[],
	targetDb: number,
	arrivalsMs: ReadonlyMap<string, number> = new Map(),
	wishes: ReadonlyMap<string, SubWish> = new Map(),
): SubLevels {
	const {profile} = context;
	const subs = subsOf(profile);
	const remarks = new Map<string, readonly Remark[]>();
	const levels = new Map<string, SeatLevel>();
	for (const {id} of subs) {
		const found = levelOverSeats(context, seats, id, usualSubBand);
		remarks.set(id, found.remarks);
		if (found.level) levels.set(id, found.level);
	}

	const common: Remark[] = [];
	const allIds = subs.map(({id}) => id);
	const counted = countedTogether(context, seats, allIds, arrivalsMs, wishes);
	const together = subs.length > 1 ? combinedLevel(counted.context, seats, allIds, common) : undefined;
	const read = subs.filter(({id}) => levels.has(id)).map(({id}) => id);
	if (read.length === 0) {
		if (together) common.push(unmatched(profile, allIds));
		const needs = together ? needsOfAll(allIds, together, targetDb) : new Map<string, SubNeed>();
		return {levels, needs, remarks, common};
	}

	const isWhole = read.length === subs.length;
	const lackDb = together && isWhole ? lackTogether(context, read, levels, together, common) : 0;
	const isUnread = read.length > 1 && !(together && isWhole);
	if (isUnread) common.push(assumed(profile, read, counted.dropped));
	const eachDb = targetDb - 20 * Math.log10(read.length) - lackDb;
	const togetherSigma = together && isWhole ? together.sigmaDb : isUnread ? unreadSigmaDb : 0;
	const needs = new Map(
		read.map(id => {
			const level = levels.get(id)!;
			const sigmaDb = combinedSigma(level.sigmaDb, togetherSigma);
			return [id, {id, gainDb: eachDb - level.atZeroTrimDb, sigmaDb}];
		}),
	);
	return {levels, needs, remarks, common};
}

/** The context with only those readings of all subs that count, at every seat that levels are made for. */
function countedTogether(
	context: LevelContext,
	seats: readonly WeightedSeat[],
	ids: readonly string[],
	arrivalsMs: ReadonlyMap<string, number>,
	wishes: ReadonlyMap<string, SubWish>,
): {readonly context: LevelContext; readonly dropped: number} {
	let {observations} = context;
	let dropped = 0;
	for (const seat of seats) {
		const counted = countingTogether(
			context.profile,
			observations,
			seat.id,
			joinedName(ids),
			ids,
			arrivalsMs,
			wishes,
		);
		observations = counted.observations;
		dropped += counted.dropped;
	}

	return {context: {...context, observations}, dropped};
}

function combinedLevel(
	context: LevelContext,
	seats: readonly WeightedSeat[],
	ids: readonly string[],
	common: Remark[],
): SeatLevel | undefined {
	const found = levelOverSeats(context, seats, joinedName(ids), usualSubBand);
	common.push(...found.remarks);
	return found.level;
}

/** How much less than in phase the subs make together, dB, ≤ 0 up to noise. */
function lackTogether(
	{profile}: LevelContext,
	ids: readonly string[],
	levels: ReadonlyMap<string, SeatLevel>,
	together: SeatLevel,
	common: Remark[],
): number {
	// Single readings carry the gains they were taken with, and the reading of all its mean gain.
	const gains = ids.map(id => levels.get(id)!.gainInForceDb);
	const meanGain = gains.reduce((sum, gain) => sum + gain, 0) / gains.length;
	const apartDb = ids.map((id, index) => levels.get(id)!.atZeroTrimDb + gains[index]! - meanGain);
	const lackDb = together.atZeroTrimDb - coherentSum(apartDb);
	const names = listed(ids.map(id => nameOf(profile, id)));
	if (lackDb > beyondCoherentDb) {
		const text = `${names} together read ${inDb(lackDb)} more than they could make in phase. One of the readings is wrong, or settings were changed between them. Read each of them and all together once more.`;
		common.push(remark('problem', 'subs-beyond-coherent', text));
	} else if (lackDb < -3) {
		const text = `${names} together make ${inDb(-lackDb)} less than in phase, although their delays are set: the room sets them against each other at this seat.`;
		common.push(remark('doubt', 'subs-against-each-other', text));
	}

	return Math.min(lackDb, beyondCoherentDb);
}

function assumed(profile: Profile, ids: readonly string[], dropped: number): Remark {
	const names = listed(ids.map(id => nameOf(profile, id)));
	const gain = inDb(20 * Math.log10(ids.length));
	const text =
		dropped > 0
			? `${names} were read together under other delays or polarities than will stand, which says nothing of these. They are assumed to add up in phase, ${gain} above one of them; that is not yet known. Read them together after Dial-in.`
			: `${names} were read one at a time only. They are assumed to add up in phase, ${gain} above one of them; that is not yet known. Read them together after Dial-in.`;
	return remark('doubt', 'coherent-sum-assumed', text);
}

function needsOfAll(ids: readonly string[], together: SeatLevel, targetDb: number): Map<string, SubNeed> {
	const gainDb = targetDb - together.atZeroTrimDb;
	return new Map(ids.map(id => [id, {id, gainDb, sigmaDb: together.sigmaDb}]));
}

function unmatched(profile: Profile, ids: readonly string[]): Remark {
	const text = `${listed(ids.map(id => nameOf(profile, id)))} were read together only, so they are moved together. Read each one alone to match them.`;
	return remark('doubt', 'subs-not-matched', text);
}
