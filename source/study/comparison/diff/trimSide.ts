import {channelOffsetOf} from '../../../profile/ask/channelOffset.ts';
import {settingFor, settingsInForce, usualMasterDb} from '../../../profile/ask/settings.ts';
import {isLfe} from '../../../profile/channels.ts';
import {usualTargetDb} from '../../../profile/practice.ts';
import type {MeterReading, Profile, SettingsSet} from '../../../profile/types.ts';
import {median} from '../../../science/numeric/statistics.ts';
import type {Solution} from '../../calibration/result.ts';
import {sourcesOf} from './levels.ts';
import {type TrimSide, trimOffset} from './trimParts.ts';

type FirstRound = {readonly trimDb: (id: string) => number; readonly masterDb: number};

/** What stood in the first round: each channel's trim at its last reading, 0 where nobody said, and the usual master volume. */
function standing(profile: Profile): FirstRound {
	const first = (profile.meter ?? []).filter(({round, setAside}) => round === 'first' && !setAside);
	const trimDb = (id: string) => {
		const subs = new Set((profile.subs ?? []).filter(({fedBy}) => fedBy === id).map(sub => sub.id));
		const isOfChannel = (reading: MeterReading) =>
			sourcesOf(reading).every(source => source === id || subs.has(source)) &&
			reading.signal?.kind !== 'tone';
		const last = first.findLast(isOfChannel);
		const set = last && settingsInForce(profile, last);
		return settingFor(set, id)?.trimDb?.stepped ?? 0;
	};

	return {trimDb, masterDb: usualMasterDb(profile, first) ?? 0};
}

/**
Everything that each channel's trim was computed from.

Several subs behind one channel count as one source: its level is the one that the trim was computed from.

@returns One entry for each channel that the solution trims.
*/
export function trimSides(
	profile: Profile,
	solution: Solution,
	set: SettingsSet | undefined,
): Map<string, TrimSide & {readonly sigma: number}> {
	const {receiver, target} = profile;
	if (!receiver) return new Map();
	const {trimDb: trimInForce, masterDb} = standing(profile);
	const subLevel = (id: string) => solution.subs.find(({fedBy, level}) => fedBy === id && level)?.level;
	const trimmed = solution.channels.flatMap(({id, trimDb, level = subLevel(id)}) => {
		if (!trimDb || !level) return [];
		const targetDb =
			(target?.levelDb ?? usualTargetDb) +
			(isLfe(id) ? (target?.subOffsetDb ?? 0) : channelOffsetOf(profile, id));
		const common = {id, ...trimDb, level, trimInForceDb: trimInForce(id), masterVolumeDb: masterDb, targetDb};
		return [{...common, levelDb: level.decibels}];
	});
	const speakers = trimmed.filter(({id}) => !isLfe(id));
	const shared = speakers.length > 0 ? speakers : trimmed;
	const solvedOffset = shared.length > 0 ? median(shared.map(trimOffset)) : 0;
	const solved = trimmed.map(side =>
		isLfe(side.id)
			? {...side, levelDb: side.trimInForceDb + side.targetDb + solvedOffset - side.exact}
			: side,
	);
	if (solved.length === 0) return new Map();
	const sharedOffset = solvedOffset;
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
