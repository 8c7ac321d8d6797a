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
import {gainOfAlignment} from './subsInPhase.ts';

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

/**
What each sub needs: matched to the others singly at the seat, and all together at the subs' target.

Together, n matched subs make 20·lg n dB more than one when they arrive in phase. A reading of all of them together
says what they really make, and the difference is carried over; without one the coherent sum is assumed.

@param targetDb - Level of all subs together, dB.
@param arrivalsMs - Of subs at the reference seat without any delay dialled in, ms; with them a reading of all together
that was taken before their delays were set counts as what it will be after.
*/
export function subLevels(
	context: LevelContext,
	seats: readonly WeightedSeat[],
	targetDb: number,
	arrivalsMs: ReadonlyMap<string, number> = new Map(),
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
	const together = subs.length > 1 ? combinedLevel(context, seats, allIds, common) : undefined;
	const read = subs.filter(({id}) => levels.has(id)).map(({id}) => id);
	if (read.length === 0) {
		if (together) common.push(unmatched(profile, allIds));
		const needs = together ? needsOfAll(allIds, together, targetDb) : new Map<string, SubNeed>();
		return {levels, needs, remarks, common};
	}

	const isWhole = read.length === subs.length;
	const lackDb =
		together && isWhole ? lackTogether(context, seats, read, levels, together, arrivalsMs, common) : 0;
	if (!together && read.length > 1) {
		const gainDb = 20 * Math.log10(read.length);
		const text = `${listed(read.map(id => nameOf(profile, id)))} were read one at a time only. Together they are assumed to add up in phase, ${inDb(gainDb)} above one of them. Read them together to be sure.`;
		common.push(remark('doubt', 'coherent-sum-assumed', text));
	}

	const eachDb = targetDb - 20 * Math.log10(read.length) - lackDb;
	const togetherSigma = together && isWhole ? together.sigmaDb : 0;
	const needs = new Map(
		read.map(id => {
			const level = levels.get(id)!;
			const sigmaDb = combinedSigma(level.sigmaDb, togetherSigma);
			return [id, {id, gainDb: eachDb - level.atZeroTrimDb, sigmaDb}];
		}),
	);
	return {levels, needs, remarks, common};
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

/** How much less than in phase the subs will make together with their delays set, dB, ≤ 0 up to noise. */
function lackTogether(
	context: LevelContext,
	seats: readonly WeightedSeat[],
	ids: readonly string[],
	levels: ReadonlyMap<string, SeatLevel>,
	together: SeatLevel,
	arrivalsMs: ReadonlyMap<string, number>,
	common: Remark[],
): number {
	const {profile} = context;
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
		const text = `${names} together make ${inDb(-lackDb)} less than in phase. They work against each other at this seat; set their delays, then read them together again.`;
		common.push(remark('doubt', 'subs-against-each-other', text));
	}

	// Lags are known at the reference seat only.
	const gainedDb =
		seats.length === 1
			? gainOfAlignment(context, seats[0]!.id, ids, apartDb, together.atZeroTrimDb, arrivalsMs)
			: 0;
	return Math.min(lackDb + gainedDb, beyondCoherentDb);
}

function needsOfAll(ids: readonly string[], together: SeatLevel, targetDb: number): Map<string, SubNeed> {
	const gainDb = targetDb - together.atZeroTrimDb;
	return new Map(ids.map(id => [id, {id, gainDb, sigmaDb: together.sigmaDb}]));
}

function unmatched(profile: Profile, ids: readonly string[]): Remark {
	const text = `${listed(ids.map(id => nameOf(profile, id)))} were read together only, so they are moved together. Read each one alone to match them.`;
	return remark('doubt', 'subs-not-matched', text);
}
