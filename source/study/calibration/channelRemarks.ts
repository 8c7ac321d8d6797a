import {receiverOf} from '../../profile/ask/boxes.ts';
import {channelOffsetOf} from '../../profile/ask/channelOffset.ts';
import type {ChannelId} from '../../profile/types.ts';
import type {Bench} from './bench.ts';
import type {SolutionFinding} from './facts.ts';
import {middleOfOthers, repeatFindings, valueOfRepeat} from './readings/advice.ts';
import {timingReason, trimReason} from './reasons.ts';
import type {Worked} from './worked.ts';

/** The reasons behind one channel's settings, and whether another reading would change them. */
export function channelRemarks(bench: Bench, worked: Worked, id: ChannelId): SolutionFinding[] {
	const {profile, targetDb, air, crossovers} = bench;
	const {arrivals, timed, levels, trimmed} = worked;
	const remarks: SolutionFinding[] = [];
	const arrival = arrivals.get(id);
	const timing = timed.channels.get(id);
	if (arrival && timing) {
		const latest = [...arrivals.values()].reduce((late, other) => (other.value > late.value ? other : late));
		remarks.push(timingReason(profile, arrival, latest, timing, air.metresPerSecond));
	}

	const level = levels.mains.get(id);
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
