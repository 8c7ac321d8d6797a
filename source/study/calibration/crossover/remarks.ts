import {subsOf} from '../../../profile/ask/subs.ts';
import {finding} from '../../../profile/finding.ts';
import {assumedSubLimitHertz, lfeTopHertz, usualHighPass, usualLowPass} from '../../../profile/practice.ts';
import type {ChannelId, Profile} from '../../../profile/types.ts';
import type {CrossoverFinding} from './facts.ts';
import type {ChannelCrossover} from './result.ts';

const isOddLinkwitzRiley = (shape?: {readonly kind: string; readonly order: number}) =>
	shape?.kind === 'linkwitz-riley' && shape.order % 2 === 1;

/** What there is to say about a crossover suggestion as a whole and channel by channel. */
export function crossoverRemarks(
	profile: Pick<Profile, 'channels' | 'subs' | 'receiver'>,
	channels: ReadonlyMap<
		ChannelId,
		Pick<ChannelCrossover, 'hertz' | 'limitAssumed' | 'limitHertz' | 'ranking'>
	>,
	lfeLowPassHertz: number | undefined,
): CrossoverFinding[] {
	const remarks: CrossoverFinding[] = [];
	const crossover = profile.receiver?.crossover;
	if (!profile.receiver) remarks.push(finding('advice', 'crossover-choices-unknown', []));
	const subs = subsOf(profile);
	if (subs.length > 0) {
		const unknown = [...channels].filter(([, {limitAssumed}]) => limitAssumed);
		const [first] = unknown;
		if (first) {
			const takenHertz = first[1].limitHertz;
			const ids = unknown.map(([id]) => id);
			remarks.push(finding('doubt', 'speaker-limit-unknown', ids, {takenHertz}));
		}

		if (!subs.some(({lowLimitHertz}) => lowLimitHertz !== undefined))
			remarks.push(finding('note', 'sub-low-limit-unknown', [], {takenHertz: assumedSubLimitHertz}));
		if (!subs.some(({upperLimitHertz}) => upperLimitHertz !== undefined))
			remarks.push(finding('note', 'sub-upper-limit-unknown', []));
	}

	for (const [filter, shape, taken] of [
		['high-pass', crossover?.highPass, usualHighPass],
		['low-pass', crossover?.lowPass, usualLowPass],
	] as const) {
		if (shape && isOddLinkwitzRiley(shape)) {
			const facts = {filter, order: shape.order, taken};
			remarks.push(finding('problem', 'filter-does-not-exist', [], facts));
		} else if (profile.receiver && !shape) {
			remarks.push(
				filter === 'high-pass'
					? finding('note', 'high-pass-assumed', [], {taken})
					: finding('note', 'low-pass-assumed', [], {taken}),
			);
		}
	}

	for (const [id, {hertz, limitHertz, ranking, limitAssumed}] of channels) {
		const chosen = ranking.find(choice => choice.hertz === hertz);
		if (!chosen?.belowLimit || limitAssumed) continue;
		remarks.push(finding('problem', 'crossover-below-limit', [id], {limitHertz, hertz: chosen.hertz}));
	}

	if (lfeLowPassHertz !== undefined && lfeLowPassHertz < lfeTopHertz) {
		const facts = {hertz: lfeLowPassHertz, topHertz: lfeTopHertz};
		remarks.push(finding('doubt', 'lfe-low-pass-low', [], facts));
	}

	return remarks;
}
