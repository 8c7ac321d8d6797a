import {subsOf} from '../../../profile/ask/subs.ts';
import {isLfe} from '../../../profile/channels.ts';
import {assumedLimitHertz, usualChoicesHertz} from '../../../profile/practice.ts';
import type {Channel, ChannelId, Profile} from '../../../profile/types.ts';
import {type BoxData, halfPowerHz} from '../../../science/acoustics/filters/box.ts';
import type {Remark} from '../result.ts';
import {type CommonChoice, rankCommon} from './common.ts';
import {type FullRangeVerdict, judgeFullRange} from './fullRange.ts';
import {lfeLowPass} from './lfe.ts';
import {bassManagement, subModel} from './model.ts';
import {type CrossoverChoice, prepareChoices, rankCrossovers} from './rank.ts';
import {choiceReasons, stepChanges} from './reasons.ts';
import {crossoverRemarks} from './remarks.ts';

export type ChannelCrossover = {
	readonly hertz: number | 'full';
	readonly reasons: readonly string[];
	/** Every choice, best first; empty where there is no sub. */
	readonly ranking: readonly CrossoverChoice[];
	/** What changes with the next choice down and up. */
	readonly oneDown?: string;
	readonly oneUp?: string;
	/** The speaker's half-power limit, hertz; the usual one where `limitAssumed`. */
	readonly limitHertz: number;
	readonly limitAssumed: boolean;
	readonly fullRange: FullRangeVerdict;
};

export type CrossoverSuggestion = {
	/** By channel; LFE channels have none. */
	readonly channels: ReadonlyMap<ChannelId, ChannelCrossover>;
	/** Where the receiver takes one frequency for all. */
	readonly common?: {readonly hertz: number; readonly ranking: readonly CommonChoice[]};
	readonly lfeLowPassHertz?: number;
	readonly remarks: readonly Remark[];
};

/** What the ranking takes for a speaker of which no limit is known. */
export function assumedBox(speaker: BoxData | undefined): {readonly box: BoxData; readonly assumed: boolean} {
	return speaker?.lowLimitHertz === undefined
		? {box: {lowLimitHertz: assumedLimitHertz}, assumed: true}
		: {box: speaker, assumed: false};
}

function fullRangeOnly({speaker}: Channel, fullRange: FullRangeVerdict): ChannelCrossover {
	const {box, assumed} = assumedBox(speaker);
	return {
		hertz: 'full',
		reasons: [fullRange.why],
		ranking: [],
		limitHertz: halfPowerHz(box)!,
		limitAssumed: assumed,
		fullRange,
	};
}

function withChoice(
	ranking: readonly CrossoverChoice[],
	hertz: number,
	limit: {readonly limitHertz: number; readonly limitAssumed: boolean},
	fullRange: FullRangeVerdict,
): ChannelCrossover {
	const chosen = ranking.find(choice => choice.hertz === hertz)!;
	const rising = [...ranking].sort((a, b) => a.hertz - b.hertz);
	const index = rising.indexOf(chosen);
	const down = rising[index - 1];
	const up = rising[index + 1];
	return {
		hertz,
		reasons: choiceReasons(chosen, limit.limitHertz, limit.limitAssumed),
		ranking,
		...(down && {oneDown: stepChanges(chosen, down)}),
		...(up && {oneUp: stepChanges(chosen, up)}),
		...limit,
		fullRange,
	};
}

/**
Suggests a crossover for every channel from the receiver's choices, and the low-pass for the LFE channel.

Speakers without a known limit are ranked as small boxes and said so. Without any sub every channel plays full range.

@param profile - Read: channels, subs, receiver.
*/
export function suggestCrossovers(profile: Profile): CrossoverSuggestion {
	const subs = subsOf(profile);
	const crossover = profile.receiver?.crossover;
	const subLimits = subs.flatMap(data => halfPowerHz(data) ?? []);
	const lowestSubHz = subLimits.length > 0 ? Math.min(...subLimits) : undefined;
	const canInvert = Boolean(profile.receiver?.invertsSubs || profile.bassProcessor?.invertsOutputs);
	const choices = [...new Set(crossover?.choicesHertz ?? usualChoicesHertz)];
	const mains = profile.channels.filter(({id}) => !isLfe(id));
	const channels = new Map<ChannelId, ChannelCrossover>();
	const verdicts = new Map(
		mains.map(({id, speaker}) => [
			id,
			judgeFullRange(speaker ?? {}, lowestSubHz, subs.length > 0, crossover?.fullRange ?? false),
		]),
	);

	let common: CrossoverSuggestion['common'];
	if (subs.length === 0) {
		for (const channel of mains) channels.set(channel.id, fullRangeOnly(channel, verdicts.get(channel.id)!));
	} else {
		const prepared = prepareChoices(subModel(subs), bassManagement(crossover), choices);
		const ranked = mains.map(({id, speaker}) => {
			const {box, assumed} = assumedBox(speaker);
			const ranking = rankCrossovers(box, prepared, canInvert);
			return {id, ranking, limit: {limitHertz: halfPowerHz(box)!, limitAssumed: assumed}};
		});
		if (crossover?.scope === 'common' && ranked.length > 0) {
			const ranking = rankCommon(ranked.map(entry => entry.ranking));
			common = {hertz: ranking[0]!.hertz, ranking};
		}

		for (const {id, ranking, limit} of ranked) {
			const hertz = common?.hertz ?? ranking[0]!.hertz;
			channels.set(id, withChoice(ranking, hertz, limit, verdicts.get(id)!));
		}
	}

	const lfeChoices = crossover?.lfeLowPassChoicesHertz ?? [];
	const lfeLowPassHertz = profile.channels.some(({id}) => isLfe(id)) ? lfeLowPass(lfeChoices) : undefined;
	return {
		channels,
		...(common && {common}),
		...(lfeLowPassHertz !== undefined && {lfeLowPassHertz}),
		remarks: crossoverRemarks(profile, channels, lfeLowPassHertz),
	};
}
