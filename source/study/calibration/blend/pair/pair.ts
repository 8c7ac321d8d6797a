import {decidedSettings} from '../../../../profile/ask/settings.ts';
import {planSetting} from '../actions.ts';
import {meterSigmaDb} from '../blendReadings.ts';
import {collectDecided} from '../collect.ts';
import type {Collected} from '../collected.ts';
import {type BlendInputs, frontsOf} from '../inputs.ts';
import {offsetOf} from '../noise.ts';
import {isSameOffset, type SubsOffset} from '../offset.ts';
import {isSoundingAlike} from '../proposal.ts';
import {recordedWish} from '../recordedWish.ts';
import {type Added, blocksOf} from '../steps.ts';
import {isSameRelation, statesOf} from '../subsState.ts';
import {fitToneSum, mostBeyondSigmas, sumLevel, type ToneSum} from '../toneSum.ts';
import {apartOf, bestPairChange, canMoveApart, pairGain} from './pairChange.ts';
import {pairCost} from './pairCost.ts';
import {oddsOfPair} from './pairOdds.ts';
import type {PairResult, PairStatus, PairTone, PairWanted} from './pairResult.ts';
import {pairToneSteps, pairTrialSteps, standingWith} from './pairSteps.ts';

/** Less is not worth twelve readings, dB. */
const worthTryingDb = 0.5;
/** Period of the middle of the tones, ms. */
const periodMs = 1000 / 45;

/**
A change of delay and polarity between two lines of subs, for the bass of the LFE channel: tones of both together tell
their level at every delay between them; noise before and after keeps the loudest or puts it back.

@param isSince - Whether a blend with the fronts was decided since it was read: that is what stands then.
@returns `undefined` where there are not two lines that a box can set apart, where distances are not known, or where a
recording has set the subs.
*/
export function pairOf(inputs: BlendInputs, found: Collected, isSince: boolean): PairResult | undefined {
	const {profile} = inputs;
	const isBegun = found.pair.tones.size > 0 || found.pair.trials.length > 0;
	const collected = isSince && !isBegun ? collectDecided(inputs) : found;
	const {stands, tolerances, isPlaced} = collected;
	const {tones, trials, kept} = collected.pair;
	if (!isPlaced || !canMoveApart(profile, collected)) return undefined;
	if (recordedWish(profile, inputs.arrivalsMs)) return undefined;
	const told = [...tones].flatMap(([hertz, own]) => fitToneSum(hertz, own) ?? []);
	const isAsked = isSameRelation(stands.relation, (kept?.from ?? collected).relation, tolerances.apartMs);
	const isTold = (hertz: number) => told.some(sum => sum.hertz === hertz);
	const asked = isAsked ? pairToneSteps(profile, collected, isTold) : [];
	const isRead =
		asked.length > 0 &&
		asked.every(({isTaken, signal}) => isTaken && signal.kind === 'tone' && isTold(signal.hertz));
	const open = trials.findLast(
		({verdict, from}) => !kept && verdict === 'open' && isSameOffset(from, stands, tolerances),
	);
	const refused = trials.filter(({verdict}) => verdict === 'put back');
	const best = isRead ? bestPairChange(profile, collected, told) : undefined;
	const foundTo = best && offsetOf(standingWith(collected, best.added));
	const isNew =
		!kept &&
		foundTo !== undefined &&
		best!.gainDb.value >= worthTryingDb &&
		!refused.some(({to}) => isSoundingAlike(apartOf(to), apartOf(foundTo), periodMs));
	const last = open ?? kept ?? (isNew ? undefined : refused.at(-1));
	const added = last?.added ?? (isNew ? best!.added : undefined);
	const to = last?.to ?? (isNew ? foundTo : undefined);
	const status = statusOf();
	const isHere = last === undefined || isSameOffset(last.from, stands, tolerances);
	const trialSteps = isHere && added && to ? pairTrialSteps(profile, collected, stands, to, added) : [];

	function statusOf(): PairStatus {
		if (open || isNew) return 'to try';
		if (kept) return 'kept';
		if (refused.length > 0) return 'put back';
		return best ? 'stands' : 'reading';
	}

	return {
		status,
		tones: tonesOf(collected, told, to, meterSigmaDb(profile)),
		...(added && to && {wanted: wantedOf(inputs, collected, told, added, to, last?.from ?? stands)}),
		...(last && {trial: {gainsDb: last.gainsDb, verdict: last.verdict}}),
		blocks: blocksOf([...asked, ...trialSteps]),
		cost: pairCost(collected.fronts.length),
		odds: oddsOfPair,
		outdates: kept ? 0 : countOf(collected),
	};
}

function wantedOf(
	inputs: BlendInputs,
	{set, tolerances}: Collected,
	told: readonly ToneSum[],
	{delayMs, isTurned, subs = []}: Added,
	to: SubsOffset,
	from: SubsOffset,
): PairWanted {
	const {profile} = inputs;
	const setting = planSetting(profile, set, subs, delayMs, isTurned);
	const decided = decidedSettings(profile);
	const relation = decided && statesOf(inputs, frontsOf(profile))(decided).relation;
	return {
		subs,
		addedMs: delayMs,
		isTurned,
		...(told.length > 0 && {gainDb: pairGain(told, apartOf(from), apartOf(to))}),
		...(setting && {setting}),
		isDecided: relation !== undefined && isSameRelation(relation, to.relation, tolerances.apartMs),
	};
}

function tonesOf(
	{pair: {tones}, stands}: Collected,
	told: readonly ToneSum[],
	to: SubsOffset | undefined,
	meterSigma: number,
): PairTone[] {
	const level = (sum: ToneSum, {laterMs, inverted}: ReturnType<typeof apartOf>) =>
		sumLevel(sum, laterMs, inverted);
	return [...tones].map(([hertz, readings]): PairTone => {
		const sum = told.find(each => each.hertz === hertz);
		if (!sum) return {hertz, readings};
		const then = to && level(sum, apartOf(to));
		return {
			hertz,
			readings,
			standsDb: level(sum, apartOf(stands)),
			// A reading that confirms it has the meter's scatter on top.
			...(then && {wantedDb: {value: then.value, sigma: Math.hypot(then.sigma, meterSigma)}}),
			...(sum.beyondSigmas > mostBeyondSigmas && {impossibleIndex: sum.likeliestIndex}),
		};
	});
}

/** Readings through the crossover that a change between subs would outdate. */
function countOf({sums}: Collected): number {
	const readings = [...sums.values()].flatMap(own => [...own.values()]);
	return readings.reduce((count, each) => count + each.length, 0);
}
