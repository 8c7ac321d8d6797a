import {referenceSeat} from '../../../profile/ask/seats.ts';
import type {MeterReading, Profile} from '../../../profile/types.ts';
import {weightingDb} from '../../../science/acoustics/weighting.ts';
import type {Remark, Uncertain} from '../result.ts';
import {collectPairs, meterSigmaDb} from './collect.ts';
import {bothLevelDb} from './cosine.ts';
import type {BlendMinimum} from './fit.ts';
import {type BlendToneResult, type Fitted, fitPair} from './fitPair.ts';
import {type Alignment, alignmentLoss, bestAlignment, type Loss} from './optimum.ts';
import {procedureSteps} from './procedure.ts';
import {fitRemarks, settingRemarks} from './remarks.ts';
import {type SeparatingReading, separatingReading} from './separate.ts';
import {addableDelays, type BlendSetting, planSetting} from './setting.ts';
import {type BlendStep, blendCautions} from './steps.ts';
import {type BlendTone, phaseBetween} from './tones.ts';

/** A reading that confirms the setting, as the meter will show it. */
export type ConfirmingReading = {
	readonly source: MeterReading['source'];
	readonly seat: string;
	readonly hertz: number;
	readonly weighting: MeterReading['weighting'];
	readonly predictedDb: Uncertain;
};

export type BlendPairResult = {
	readonly id: string;
	readonly kind: 'subs' | 'mains';
	readonly still: readonly string[];
	readonly moved: readonly string[];
	readonly crossoverHertz: number;
	readonly tones: readonly BlendToneResult[];
	/** Every answer that the readings allow, best first. */
	readonly minima: ReadonlyArray<Omit<BlendMinimum, 'tones'>>;
	/** The reading to take next where there is more than one answer. */
	readonly next?: SeparatingReading;
	/** Exact alignment wanted, on top of the settings that stand. */
	readonly alignment?: Alignment;
	readonly setting?: BlendSetting;
	/** At the tone nearest to the crossover: level of both now and after the setting, dB without weighting. */
	readonly expected?: {readonly hertz: number; readonly nowDb: number; readonly thenDb: number};
	readonly confirm: readonly ConfirmingReading[];
	readonly remarks: readonly Remark[];
};

export type BlendResult = {
	readonly seat: string;
	readonly pairs: readonly BlendPairResult[];
	/** What to read next, in order; empty when nothing is left to read. */
	readonly steps: readonly BlendStep[];
	readonly cautions: readonly string[];
	readonly remarks: readonly Remark[];
};

/** One alignment for all pairs with the same moved group: the smallest mean loss over their best answers. */
function alignTogether(fits: readonly Fitted[]): Alignment | undefined {
	const answered = fits.flatMap(({pair, fit}) => {
		const [minimum] = fit.minima;
		return minimum ? [{minimum, loss: alignmentLoss(pair.paths), hertz: pair.paths.crossoverHertz}] : [];
	});
	if (answered.length === 0) return undefined;
	const loss: Loss = (addedMs, flip, enoughDb = Number.POSITIVE_INFINITY) => {
		const most = enoughDb * answered.length;
		let sum = 0;
		for (const {minimum, loss: of} of answered) {
			sum += of(minimum.arrivalMs + addedMs, minimum.inverted !== flip, most);
			if (sum > most * (1 + 1e-9)) return Number.POSITIVE_INFINITY;
		}

		return sum / answered.length;
	};

	return bestAlignment(loss, answered[0]!.hertz, -answered[0]!.minimum.arrivalMs);
}

/** Level of both at a tone under one answer, with a delay added and perhaps the polarity turned. */
function levelAt(
	tone: BlendTone,
	index: number,
	minimum: BlendMinimum,
	addedMs: number,
	flip: boolean,
): number {
	const {stillDb, movedDb} = minimum.tones[index]!;
	const phase = phaseBetween(tone, minimum.arrivalMs, addedMs, minimum.inverted !== flip);
	return bothLevelDb(stillDb, movedDb, Math.cos(phase));
}

function confirming(
	profile: Profile,
	{pair, usable}: Fitted,
	minimum: BlendMinimum,
	addedMs: number,
	flip: boolean,
): ConfirmingReading[] {
	const weighting = profile.kit?.meterWeighting ?? 'C';
	const readingSigma = meterSigmaDb(profile);
	return usable.map((tone, index) => {
		const value = levelAt(tone, index, minimum, addedMs, flip);
		const swing = [-1, 1].map(
			side => levelAt(tone, index, minimum, addedMs + side * minimum.sigmaMs, flip) - value,
		);
		return {
			source: [...pair.still, ...pair.moved],
			seat: referenceSeat(profile).id,
			hertz: tone.hertz,
			weighting,
			predictedDb: {
				value: value + weightingDb(weighting, tone.hertz),
				sigma: Math.hypot(readingSigma, Math.max(...swing.map(Math.abs))),
			},
		};
	});
}

function finishPair(profile: Profile, fitted: Fitted, alignment: Alignment | undefined): BlendPairResult {
	const {pair, usable, tones, fit} = fitted;
	const [minimum] = fit.minima;
	const crossoverHertz = pair.paths.crossoverHertz;
	const next = separatingReading(
		usable,
		fit.minima,
		addableDelays(profile, pair, crossoverHertz),
		meterSigmaDb(profile),
	);
	const setting = alignment && planSetting(profile, pair, alignment.addedMs, alignment.flip);
	const addedMs = setting?.addedMs ?? 0;
	const flip = alignment?.flip ?? false;
	const distance = (tone: BlendTone) => Math.abs(Math.log(tone.hertz / crossoverHertz));
	const nearest = usable.reduce(
		(best, tone, index) => (distance(tone) < distance(usable[best]!) ? index : best),
		0,
	);
	const expected =
		minimum && setting
			? {
					hertz: usable[nearest]!.hertz,
					nowDb: levelAt(usable[nearest]!, nearest, minimum, 0, false),
					thenDb: levelAt(usable[nearest]!, nearest, minimum, addedMs, flip),
				}
			: undefined;
	return {
		id: pair.id,
		kind: pair.kind,
		still: pair.still,
		moved: pair.moved,
		crossoverHertz,
		tones,
		minima: fit.minima.map(({tones: _, ...rest}) => rest),
		...(next && {next}),
		...(alignment && {alignment}),
		...(setting && {setting}),
		...(expected && {expected}),
		confirm: minimum && setting ? confirming(profile, fitted, minimum, addedMs, flip) : [],
		remarks: [
			...fitted.remarks,
			...fitRemarks(pair, fit, next),
			...settingRemarks(profile, pair, fit, alignment, setting),
		],
	};
}

/**
Delay and polarity with which subs and mains add up, from levels of tones alone.

Subs are first matched to each other, pair by pair, then all of them to the mains. Several groups of mains share one
setting of the subs.

@param profile - Read: channels, subs, receiver, bass processor, settings, meter, kit, seats.
*/
export function blend(profile: Profile): BlendResult {
	const {pairs, remarks} = collectPairs(profile);
	const fits = pairs.map(fitPair);
	const results = fits.map(fitted => {
		const {kind, moved} = fitted.pair;
		const together =
			kind === 'mains'
				? fits.filter(({pair}) => pair.kind === 'mains' && pair.moved.join('+') === moved.join('+'))
				: [fitted];
		return finishPair(profile, fitted, alignTogether(together));
	});
	const nothing: Remark[] = results.some(({minima}) => minima.length > 0)
		? []
		: [
				{
					kind: 'problem',
					code: 'blend-nothing-read',
					text: 'Blend: no tone was read with one side alone, the other alone, and both. Take the steps listed.',
				},
			];
	return {
		seat: referenceSeat(profile).id,
		pairs: results,
		steps: procedureSteps(profile, fits).filter(({taken}) => taken === 0),
		cautions: blendCautions,
		remarks: [...remarks, ...nothing],
	};
}
