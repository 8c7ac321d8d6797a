import {referenceSeat} from '../../../profile/ask/seats.ts';
import {listed, nameOf} from '../../../profile/names.ts';
import {usualMeterSigmaDb} from '../../../profile/practice.ts';
import type {Profile} from '../../../profile/types.ts';
import {energyMean} from '../../../science/acoustics/decibels.ts';
import type {Remark} from '../result.ts';
import {remark} from '../words.ts';
import {type BlendGroups, groupKey, groupsOfBoth, pairId, type Sounding} from './groups.ts';
import {type BlendPaths, blendPaths, knownPhase, membersAssumed} from './paths.ts';
import {type GroupStanding, groupStanding, type StandingSet} from './standing.ts';
import {type ToneReading, toneReadings} from './toneReadings.ts';
import type {BlendTone} from './tones.ts';

/** No meter repeats itself better than this at a seat, dB. */
const leastMeterSigmaDb = 0.02;

/** Standard deviation of one reading of the meter, dB. */
export function meterSigmaDb(profile: Profile): number {
	return Math.max(leastMeterSigmaDb, profile.kit?.meterSigmaDb ?? usualMeterSigmaDb);
}

export type CollectedPair = BlendGroups & {
	readonly id: string;
	readonly paths: BlendPaths;
	/** Settings that the delays of the result are on top of: those in force at the latest reading. */
	readonly standing?: StandingSet;
	readonly tones: readonly BlendTone[];
	readonly remarks: readonly Remark[];
};

const isSame = (one: readonly string[], other: readonly string[]) => groupKey(one) === groupKey(other);

/** Level of a group alone at each reading of it, brought to the standing settings; undefined where all were taken with another balance. */
function aloneLevel(
	readings: readonly ToneReading[],
	profile: Profile,
	ids: readonly string[],
	at: GroupStanding | undefined,
	master: number | undefined,
	sigmaDb: number,
): {readonly decibels: number; readonly sigmaDb: number} | undefined {
	const levels = readings.flatMap(({set, decibels, sigmaFactor}) => {
		if (!set || !at) return [{decibels, sigmaFactor}];
		const here = groupStanding(profile, set, ids);
		if (here.balance !== at.balance) return [];
		return [{decibels: decibels - (here.gainDb - at.gainDb) - masterOffset(set, master), sigmaFactor}];
	});
	if (levels.length === 0) return undefined;
	const worst = levels.reduce((high, {sigmaFactor}) => Math.max(high, sigmaFactor), 1);
	return {
		decibels: energyMean(levels.map(({decibels}) => decibels)),
		sigmaDb: (sigmaDb * worst) / Math.sqrt(levels.length),
	};
}

function masterOffset(set: StandingSet, master: number | undefined): number {
	return set.masterVolumeDb === undefined || master === undefined ? 0 : set.masterVolumeDb - master;
}

function collectPair(
	profile: Profile,
	groups: BlendGroups,
	readings: readonly ToneReading[],
	sigmaDb: number,
): CollectedPair {
	const {still, moved, kind} = groups;
	const remarks: Remark[] = [];
	const id = pairId(groups);
	const stillOf = ({mains, subs}: Sounding) => (kind === 'mains' ? mains : subs);
	const isStillAlone = ({sounding: s}: ToneReading) =>
		isSame(stillOf(s), still) && (kind === 'subs' ? s.mains.length === 0 : s.subs.length === 0);
	const isMovedAlone = ({sounding: s}: ToneReading) => s.mains.length === 0 && isSame(s.subs, moved);
	const isBoth = ({sounding: s}: ToneReading) => {
		const both = groupsOfBoth(s);
		return both !== undefined && pairId(both) === id;
	};

	const mine = readings.filter(r => isStillAlone(r) || isMovedAlone(r) || isBoth(r));
	const standing = mine.findLast(({set}) => set)?.set;
	const master = standing?.masterVolumeDb;
	const stillAt = standing && groupStanding(profile, standing, still);
	const movedAt = standing && groupStanding(profile, standing, moved);
	const paths = blendPaths(profile, standing, groups);
	if (standing && mine.some(({set}) => !set)) {
		remarks.push(
			remark(
				'doubt',
				'settings-unknown',
				'Some tone readings do not say which settings stood. They are taken as read under the latest ones.',
				id,
			),
		);
	}

	const assumed = membersAssumed(profile, groups);
	// Boxes that are assumed alike turn the phase alike; between two subs of which both are assumed nothing is left.
	if (assumed.length > 0 && (kind === 'mains' || assumed.length < still.length + moved.length)) {
		remarks.push(
			remark(
				'doubt',
				'boxes-assumed',
				`Low limit of ${listed(assumed.map(member => nameOf(profile, member)))} not given: the phase of a usual one is taken, which may be off by some tenths of a period. Enter it under Kit.`,
				id,
			),
		);
	}

	let otherBalance = 0;
	const tones = [...new Set(mine.map(({hertz}) => hertz))]
		.sort((a, b) => a - b)
		.flatMap((hertz): BlendTone[] => {
			const here = mine.filter(reading => reading.hertz === hertz);
			const stillAlone = aloneLevel(here.filter(isStillAlone), profile, still, stillAt, master, sigmaDb);
			const movedAlone = aloneLevel(here.filter(isMovedAlone), profile, moved, movedAt, master, sigmaDb);
			if (!stillAlone || !movedAlone) return [];
			const both = here.filter(isBoth).flatMap(({set, index, decibels, sigmaFactor, addedMs}) => {
				const plain = {
					decibels,
					sigmaDb: sigmaDb * sigmaFactor,
					delayMs: addedMs,
					inverted: false,
					stillOffsetDb: 0,
					movedOffsetDb: 0,
					index,
				};
				if (!set || !stillAt || !movedAt) return [plain];
				const stillHere = groupStanding(profile, set, still);
				const movedHere = groupStanding(profile, set, moved);
				if (stillHere.balance !== stillAt.balance || movedHere.balance !== movedAt.balance) {
					otherBalance += 1;
					return [];
				}

				const between = (one: GroupStanding, other: GroupStanding) =>
					one.delayMs === undefined || other.delayMs === undefined ? 0 : one.delayMs - other.delayMs;
				const louder = masterOffset(set, master);
				return [
					{
						...plain,
						delayMs: addedMs + between(movedHere, stillHere) - between(movedAt, stillAt),
						inverted: (movedHere.inverted !== stillHere.inverted) !== (movedAt.inverted !== stillAt.inverted),
						stillOffsetDb: stillHere.gainDb - stillAt.gainDb + louder,
						movedOffsetDb: movedHere.gainDb - movedAt.gainDb + louder,
					},
				];
			});
			return [
				{
					hertz,
					stillDb: stillAlone.decibels,
					stillSigmaDb: stillAlone.sigmaDb,
					movedDb: movedAlone.decibels,
					movedSigmaDb: movedAlone.sigmaDb,
					knownPhase: knownPhase(paths, hertz),
					both,
				},
			];
		});
	if (otherBalance > 0) {
		remarks.push(
			remark(
				'note',
				'other-settings',
				`${otherBalance} tone readings of both were taken with another crossover, or with the speakers of one side set differently to each other. They are left out.`,
				id,
			),
		);
	}

	return {...groups, id, paths, ...(standing && {standing}), tones, remarks};
}

/**
Gathers the tone readings at the reference seat into pairs of groups: subs against each other first, then subs
against mains.

@param profile - Read: meter, settings, channels, subs, kit, receiver.
*/
export function collectPairs(profile: Profile): {
	readonly pairs: readonly CollectedPair[];
	readonly remarks: readonly Remark[];
} {
	const remarks: Remark[] = [];
	const readings = toneReadings(profile, referenceSeat(profile).id, remarks);
	const sigmaDb = meterSigmaDb(profile);
	const groups = new Map<string, BlendGroups>();
	for (const reading of readings) {
		const both = groupsOfBoth(reading.sounding);
		if (both) groups.set(pairId(both), both);
	}

	// Several subs sounding together are one side of a pair with mains; they are a pair of their own only where each
	// side was read alone too.
	const pairs = [...groups.values()]
		.map(group => collectPair(profile, group, readings, sigmaDb))
		.filter(({kind, tones}) => kind === 'mains' || tones.length > 0)
		.sort((one, other) => Number(one.kind === 'mains') - Number(other.kind === 'mains'));
	return {pairs, remarks};
}
