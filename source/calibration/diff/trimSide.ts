import {median} from '../../numeric/statistics.ts';
import {isLfe} from '../../profile/channels.ts';
import type {MeterReading, Profile, SettingsSet} from '../../profile/types.ts';
import {settingsInForce} from '../inForce.ts';
import type {Solution} from '../result.ts';
import {sourcesOf} from './levels.ts';
import {type TrimSide, trimOffset} from './trimParts.ts';

/** Level that test signals aim at where the profile states none, dB. */
const usualTargetDb = 75;

/** The settings in which a channel's first readings were taken; undefined where they do not say, or disagree. */
function inForceOf(
	profile: Profile,
	id: string,
): {readonly trimDb: number; readonly masterDb: number} | undefined {
	const subs = new Set((profile.subs ?? []).filter(({fedBy}) => fedBy === id).map(sub => sub.id));
	const isOfChannel = (reading: MeterReading) =>
		reading.round === 'first' &&
		!reading.setAside &&
		sourcesOf(reading).every(source => source === id || subs.has(source));
	const found = (profile.meter ?? []).filter(isOfChannel).map(reading => {
		const set = settingsInForce(profile, reading);
		const trimDb = set?.channels[id as keyof typeof set.channels]?.trimDb?.stepped;
		return trimDb === undefined ? undefined : {trimDb, masterDb: set?.masterVolumeDb ?? 0};
	});
	const first = found[0];
	const agree = found.every(one => one?.trimDb === first?.trimDb && one?.masterDb === first?.masterDb);
	return agree ? first : undefined;
}

/**
Everything that each channel's trim was computed from.

@returns One entry for each channel whose level the solution holds and whose trim in force is known.
*/
export function trimSides(
	profile: Profile,
	solution: Solution,
	set: SettingsSet | undefined,
): Map<string, TrimSide & {readonly sigma: number}> {
	const {receiver, target} = profile;
	if (!receiver) return new Map();
	const solved = solution.channels.flatMap(({id, trimDb, level}) => {
		const inForce = inForceOf(profile, id);
		if (!trimDb || !level || !inForce) return [];
		const targetDb = (target?.levelDb ?? usualTargetDb) + (isLfe(id) ? (target?.subOffsetDb ?? 0) : 0);
		return [
			{
				id,
				...trimDb,
				level,
				levelDb: level.decibels,
				trimInForceDb: inForce.trimDb,
				masterVolumeDb: inForce.masterDb,
				targetDb,
			},
		];
	});
	if (solved.length === 0) return new Map();
	const sharedOffset = median(solved.map(trimOffset));
	const sharedShift = median(solved.map(({exact, stepped}) => stepped - exact));
	return new Map(
		solved.map(({id, level, ...side}) => [
			id,
			{
				...side,
				sharedOffset,
				sharedShift,
				dialled: set?.channels[id]?.trimDb?.stepped ?? side.stepped,
				backgroundCorrectionDb: level.backgroundCorrectionDb,
				weightingCorrectionDb: level.weightingCorrectionDb,
				meterOffsetDb: profile.kit?.meterOffsetDb ?? 0,
				step: receiver.trim.stepDb,
				minimum: receiver.trim.minimumDb,
				maximum: receiver.trim.maximumDb,
			},
		]),
	);
}
