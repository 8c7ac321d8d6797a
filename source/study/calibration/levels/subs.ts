import {joinedName, meterKey} from '../../../profile/ask/readings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {finding} from '../../../profile/finding.ts';
import {againstEachOtherDb, beyondCoherentDb, usualSubBand} from '../../../profile/practice.ts';
import {coherentSum} from '../../../science/acoustics/decibels.ts';
import {combinedSigma} from '../../../science/numeric/statistics.ts';
import type {LevelFinding} from './facts.ts';
import {levelOverSeats, type WeightedSeat} from './levelSeats.ts';
import type {LevelContext, SeatLevel} from './levels.ts';
import {countingTogether, type SubWish} from './subsTogether.ts';

/** What receiver and processor together should do to the level of one sub. */
export type SubNeed = {readonly id: string; readonly gainDb: number; readonly sigmaDb: number};

export type SubLevels = {
	readonly levels: ReadonlyMap<string, SeatLevel>;
	readonly needs: ReadonlyMap<string, SubNeed>;
	/** By sub. */
	readonly remarks: ReadonlyMap<string, readonly LevelFinding[]>;
	/** About the subs together. */
	readonly common: readonly LevelFinding[];
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
	const remarks = new Map<string, readonly LevelFinding[]>();
	const levels = new Map<string, SeatLevel>();
	for (const {id} of subs) {
		const found = levelOverSeats(context, seats, id, usualSubBand);
		remarks.set(id, found.remarks);
		if (found.level) levels.set(id, found.level);
	}

	const common: LevelFinding[] = [];
	const allIds = subs.map(({id}) => id);
	const counted = countedTogether(context, seats, allIds, arrivalsMs, wishes);
	const together = subs.length > 1 ? combinedLevel(counted.context, seats, allIds, common) : undefined;
	const read = subs.filter(({id}) => levels.has(id)).map(({id}) => id);
	if (read.length === 0) {
		if (together) common.push(finding('doubt', 'subs-not-matched', allIds));
		const needs = together ? needsOfAll(allIds, together, targetDb) : new Map<string, SubNeed>();
		return {levels, needs, remarks, common};
	}

	const isWhole = read.length === subs.length;
	const lackDb =
		together && isWhole ? lackTogether(counted.context, seats, read, levels, together, common) : 0;
	const isUnread = read.length > 1 && !(together && isWhole);
	if (isUnread) {
		const facts = {gainDb: 20 * Math.log10(read.length), isOutdated: counted.dropped > 0};
		common.push(finding('doubt', 'coherent-sum-assumed', read, facts));
	}

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
	common: LevelFinding[],
): SeatLevel | undefined {
	const found = levelOverSeats(context, seats, joinedName(ids), usualSubBand);
	common.push(...found.remarks);
	return found.level;
}

/** How much less than in phase the subs make together, dB, ≤ 0 up to noise. */
function lackTogether(
	{observations, gainInForce}: LevelContext,
	seats: readonly WeightedSeat[],
	ids: readonly string[],
	levels: ReadonlyMap<string, SeatLevel>,
	together: SeatLevel,
	common: LevelFinding[],
): number {
	// The reading of all carries its mean gain; what each sub had more or less then, its single level gets too.
	const readings = seats.flatMap(({id}) => observations.meter.get(meterKey(id, joinedName(ids))) ?? []);
	const gains = ids.map(id => gainInForce(readings.at(-1)!, id));
	const meanGain = gains.reduce((sum, gain) => sum + gain, 0) / gains.length;
	const apartDb = ids.map((id, index) => levels.get(id)!.atZeroTrimDb + gains[index]! - meanGain);
	const lackDb = together.atZeroTrimDb - coherentSum(apartDb);
	if (lackDb > beyondCoherentDb) {
		common.push(finding('problem', 'subs-beyond-coherent', ids, {excessDb: lackDb}));
	} else if (lackDb < -againstEachOtherDb) {
		common.push(finding('doubt', 'subs-against-each-other', ids, {lackDb: -lackDb}));
	}

	return Math.min(lackDb, beyondCoherentDb);
}

function needsOfAll(ids: readonly string[], together: SeatLevel, targetDb: number): Map<string, SubNeed> {
	const gainDb = targetDb - together.atZeroTrimDb;
	return new Map(ids.map(id => [id, {id, gainDb, sigmaDb: together.sigmaDb}]));
}
