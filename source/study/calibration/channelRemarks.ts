import {receiverOf} from '../../profile/ask/boxes.ts';
import {channelOffsetOf} from '../../profile/ask/channelOffset.ts';
import type {ChannelId, Profile} from '../../profile/types.ts';
import type {SpeedOfSound} from '../../science/acoustics/air.ts';
import type {CrossoverSuggestion} from './crossover/result.ts';
import type {SolutionRemark} from './facts.ts';
import type {SeatLevel} from './levels/levels.ts';
import type {TrimResult} from './levels/trims.ts';
import {middleOfOthers, repeatFindings, valueOfRepeat} from './readings/advice.ts';
import {timingReason, trimReason} from './reasons.ts';
import type {Arrival, TimingResult} from './timing/result.ts';

export type Told = {
	readonly profile: Profile;
	readonly arrivals: ReadonlyMap<string, Arrival>;
	readonly timed: TimingResult;
	readonly levels: ReadonlyMap<string, SeatLevel>;
	readonly trimmed: TrimResult | undefined;
	readonly targetDb: number;
	readonly air: SpeedOfSound;
	readonly crossovers: CrossoverSuggestion;
};

/** The reasons behind one channel's settings, and whether another reading would change them. */
export function channelRemarks(told: Told, id: ChannelId): SolutionRemark[] {
	const {profile, arrivals, timed, levels, trimmed, targetDb, air, crossovers} = told;
	const remarks: SolutionRemark[] = [];
	const arrival = arrivals.get(id);
	const timing = timed.channels.get(id);
	if (arrival && timing) {
		const latest = [...arrivals.values()].reduce((late, other) => (other.value > late.value ? other : late));
		remarks.push(timingReason(profile, arrival, latest, timing, air.metresPerSecond));
	}

	const level = levels.get(id);
	const trim = trimmed?.channels.get(id);
	if (level && trim && trimmed) {
		const wantedDb = targetDb + channelOffsetOf(profile, id);
		remarks.push(trimReason(id, level, trim, wantedDb, trimmed.masterVolumeChangeDb));
		if (trimmed.fits) {
			const {stepDb} = receiverOf(profile).receiver.trim;
			const error = (trimmed.errors.get(id) ?? 0) - middleOfOthers(trimmed.errors, id);
			const value = valueOfRepeat(error, stepDb, level.singleSigmaDb, level.repeats);
			remarks.push(...repeatFindings(id, value, level.repeats));
		}
	}

	const crossover = crossovers.channels.get(id);
	if (crossover) {
		for (const reason of crossover.reasons) remarks.push({...reason, about: [id]});
	}

	remarks.push(
		...crossovers.remarks.filter(({code, about}) => code === 'crossover-below-limit' && about[0] === id),
	);
	return remarks;
}
