import {referenceSeat} from '../../../profile/ask/seats.ts';
import {decidedSettings} from '../../../profile/ask/settings.ts';
import type {Profile} from '../../../profile/types.ts';
import {subGroups} from '../../hearing/visit.ts';
import {planSetting} from './actions.ts';
import type {FrontSums, Offset} from './bestState.ts';
import {meterSigmaDb} from './blendReadings.ts';
import type {BlendResult, BlendStatus, ToneResult, WantedSetting} from './blendResult.ts';
import {collect} from './collect.ts';
import type {Collected} from './collected.ts';
import {type BlendInputs, frontsOf} from './inputs.ts';
import type {BlendWay} from './odds.ts';
import {isSameOffset, type SubsOffset} from './offset.ts';
import {pairOf} from './pair/pair.ts';
import {offsetSteps, toneSteps, verificationSteps} from './planned.ts';
import {
	bestOfTones,
	gainAt,
	isSoundingAlike,
	loudestOf,
	type Proposal,
	searchLevels,
	sumsOf,
} from './proposal.ts';
import {recordedWish} from './recordedWish.ts';
import {type Added, type BlendStep, blocksOf} from './steps.ts';
import {isSameRelation, statesOf} from './subsState.ts';
import type {Estimate} from './toneSum.ts';
import {mostBeyondSigmas, sumLevel} from './toneSum.ts';
import {type Trial, trialsIn} from './verification.ts';
import {offeredWays} from './ways.ts';

/** Less is not worth eight readings, dB. */
const worthTryingDb = 0.5;

/** The way that readings were begun with; the one chosen at the stop else, and tones where none was. */
export function blendWayOf({meter, walk}: Profile): BlendWay {
	const read = (meter ?? []).findLast(
		({blendPart, signal, source}) =>
			blendPart === 'search' || (signal?.kind === 'tone' && Array.isArray(source)),
	);
	return walk?.blendWay ?? (read?.blendPart === 'search' ? 'search' : 'tones');
}

/**
Delay and polarity with which subs and front speakers add up, from levels of both together alone.

All subs keep their relation to each other and move together. What is found is a setting to try until noise before and
after has verified it.
*/
export function blend(inputs: BlendInputs, way: BlendWay = blendWayOf(inputs.profile)): BlendResult {
	const {profile} = inputs;
	const collected = collect(inputs);
	const {fronts, subs, stands, tolerances, periodMs} = collected;
	const sums = sumsOf(collected);
	const isTold = (front: string, hertz: number) => sums.get(front)?.some(sum => sum.hertz === hertz) ?? false;
	const standsApart = !isSameRelation(stands.relation, collected.relation, tolerances.apartMs);
	const asked = standsApart
		? []
		: way === 'search'
			? offsetSteps(profile, collected)
			: toneSteps(profile, collected, isTold);
	const isRead = asked.length > 0 && asked.every(({isTaken}) => isTaken);
	const {trials, start} = trialsIn(collected);
	const kept = trials.findLast(({verdict}) => verdict === 'kept');
	const open = trials.findLast(({verdict}) => verdict === 'open');
	const refused = trials.filter(({verdict}) => verdict === 'put back');
	const current = kept?.to.offset ?? start;
	const levels = way === 'search' ? searchLevels(profile, collected) : [];
	const found = !isRead
		? undefined
		: way === 'search'
			? loudestOf(levels, meterSigmaDb(profile))
			: bestOfTones(profile, collected, sums, current);
	const isNew =
		found !== undefined &&
		found.gainDb!.value >= worthTryingDb &&
		!isSameOffset({...found, relation: current.relation}, current, tolerances) &&
		!refused.some(({to}) => isSoundingAlike(to.offset, found, periodMs));
	const last = open ?? (isNew ? undefined : trials.at(-1));
	const proposal: Proposal | undefined = last
		? {...last.to.offset, ...(found && way === 'tones' && {gainDb: gainAt(sums, start, last.to.offset)})}
		: isNew
			? found
			: undefined;
	const wanted = proposal && wantedOf(inputs, collected, proposal);
	const pair = pairOf(inputs, collected, kept !== undefined && wanted?.isDecided === true);
	const status = statusOf();

	function statusOf(): BlendStatus {
		if (fronts.length === 0 || subs.length === 0) return 'nothing';
		if (open || isNew) return 'to try';
		if (kept) return 'kept';
		if (refused.length > 0) return 'put back';
		return found ? 'stands' : 'reading';
	}

	const verification = proposal
		? verificationOf(profile, collected, last?.from.offset ?? current, last?.to.offset, wanted)
		: [];
	return {
		seat: referenceSeat(profile).id,
		way,
		status,
		fronts: fronts.map(({id}) => id),
		...(collected.centre !== undefined && {centre: collected.centre}),
		subs,
		crossoverHertz: collected.crossoverHertz,
		stands: {laterMs: stands.laterMs, inverted: stands.inverted},
		tones: tonesOf(collected, sums, stands, proposal, meterSigmaDb(profile)),
		search: levels.map(({levelDb}) => (levelDb === undefined ? {} : {levelDb})),
		...(wanted && {wanted}),
		...(last && {trial: gainsOf(last)}),
		blocks: blocksOf([...asked, ...verification]),
		...(pair && {pair}),
		ways: subs.length === 0 ? [] : offeredWays(fronts.length),
		standsApart: standsApart && subs.length > 0,
		isSetByRecording: recordedWish(profile, inputs.arrivalsMs) !== undefined,
		isToldApartByRecording: subGroups(profile).length > 1,
		otherRelation: collected.otherRelation,
		otherSettings: collected.otherSettings,
		drowned: collected.drowned,
		partly: collected.partly,
	};
}

function gainsOf({frontsGainDb, centreGainDb, verdict}: Trial) {
	return {
		...(frontsGainDb !== undefined && {frontsGainDb}),
		...(centreGainDb !== undefined && {centreGainDb}),
		verdict,
	};
}

function wantedOf(inputs: BlendInputs, collected: Collected, proposal: Proposal): WantedSetting {
	const {profile} = inputs;
	const {set, subs, stands, tolerances} = collected;
	const addedMs = proposal.laterMs - stands.laterMs;
	const setting = planSetting(profile, set, subs, addedMs, proposal.inverted !== stands.inverted);
	const decided = decidedSettings(profile);
	const state = decided && statesOf(inputs, frontsOf(profile))(decided);
	const offset = {laterMs: proposal.laterMs, inverted: proposal.inverted};
	return {
		...offset,
		...(proposal.gainDb && {gainDb: proposal.gainDb}),
		...(setting && {setting}),
		isDecided:
			state !== undefined &&
			isSameOffset(
				{...offset, relation: collected.relation},
				{laterMs: state.meanLaterMs, inverted: state.inverted, relation: state.relation},
				tolerances,
			),
	};
}

function verificationOf(
	profile: Profile,
	collected: Collected,
	before: SubsOffset,
	tried: SubsOffset | undefined,
	wanted: WantedSetting | undefined,
): BlendStep[] {
	const {stands} = collected;
	const made = (offset: Offset): Added => ({
		delayMs: Number((offset.laterMs - stands.laterMs).toFixed(4)),
		isTurned: offset.inverted !== stands.inverted,
	});
	// What the boxes make of it is what will be read.
	const laterMs = stands.laterMs + (wanted?.setting?.addedMs ?? 0);
	const goal = tried ?? {...before, laterMs, inverted: wanted?.inverted ?? stands.inverted};
	return [
		...verificationSteps(profile, collected, 'before', made(before), before),
		...verificationSteps(profile, collected, 'after', made(goal), goal),
	];
}

function tonesOf(
	{fronts, sums: readings}: Collected,
	sums: FrontSums,
	stands: Offset,
	wanted: Offset | undefined,
	meterSigma: number,
): ToneResult[] {
	// A reading that confirms it has the meter's scatter on top.
	const toConfirm = ({value, sigma}: Estimate): Estimate => ({value, sigma: Math.hypot(sigma, meterSigma)});
	return fronts.flatMap(({id}) =>
		[...(readings.get(id) ?? [])].map(([hertz, own]): ToneResult => {
			const sum = sums.get(id)?.find(each => each.hertz === hertz);
			return {
				front: id,
				hertz,
				readings: own,
				...(sum && {standsDb: sumLevel(sum, stands.laterMs, stands.inverted)}),
				...(sum && wanted && {wantedDb: toConfirm(sumLevel(sum, wanted.laterMs, wanted.inverted))}),
				...(sum && sum.beyondSigmas > mostBeyondSigmas && {impossibleIndex: sum.likeliestIndex}),
			};
		}),
	);
}
