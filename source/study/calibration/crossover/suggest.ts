import {bassManagement} from '../../../profile/ask/bassManagement.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {isLfe} from '../../../profile/channels.ts';
import {assumedLimitHertz, usualChoicesHertz} from '../../../profile/practice.ts';
import type {Channel, ChannelId, Profile} from '../../../profile/types.ts';
import {type BoxData, halfPowerHz} from '../../../science/acoustics/filters/box.ts';
import {rankCommon} from './common.ts';
import {judgeFullRange} from './fullRange.ts';
import {lfeLowPass} from './lfe.ts';
import {subModel} from './model.ts';
import {pairingJudge} from './pairing.ts';
import {type CrossoverChoice, prepareChoices, rankCrossovers} from './rank.ts';
import {choiceReasons, stepChanges} from './reasons.ts';
import {crossoverRemarks} from './remarks.ts';
import type {ChannelCrossover, CrossoverSuggestion, FullRangeVerdict} from './result.ts';

/** The parts of a profile that crossovers depend on: no reading enters them. */
export type Gear = Pick<Profile, 'channels' | 'subs' | 'receiver' | 'bassProcessor'>;

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

Speakers that are alike are ranked once.
*/
export function suggestCrossovers(profile: Gear): CrossoverSuggestion {
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
		const judge = pairingJudge();
		const known = new Map<string, readonly CrossoverChoice[]>();
		const rankingOf = (box: BoxData) => {
			const {lowLimitHertz, lowLimitDropDb, box: kind, totalQ} = box;
			const key = JSON.stringify([lowLimitHertz, lowLimitDropDb, kind, totalQ]);
			const ranking = known.get(key) ?? rankCrossovers(box, prepared, canInvert, judge);
			known.set(key, ranking);
			return ranking;
		};
		const ranked = mains.map(({id, speaker}) => {
			const {box, assumed} = assumedBox(speaker);
			const ranking = rankingOf(box);
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
