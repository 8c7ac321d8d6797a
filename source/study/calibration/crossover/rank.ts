import type {BassManagement} from '../../../profile/ask/bassManagement.ts';
import {
	crossoverWeights,
	drawPoints,
	driveFreeDb,
	localisableFromHertz,
	localisedFromHertz,
	reliefFreeDb,
	rippleAlikeDb,
	toleranceMs,
	usualCrossoverHertz,
} from '../../../profile/practice.ts';
import {type AnalogFilter, cascade} from '../../../science/acoustics/filters/analogFilter.ts';
import {type BoxData, boxFilter, halfPowerHz} from '../../../science/acoustics/filters/box.ts';
import {
	type ComplexCurve,
	filterLevelDb,
	filterResponse,
} from '../../../science/acoustics/filters/response.ts';
import {shapedFilter} from '../../../science/acoustics/filters/shape.ts';
import {excursionReliefDb, excursionWeights} from './excursion.ts';
import {type SubModel, subPath} from './model.ts';
import {gridAbout, type Pairing, type PairingJudge, pairingJudge, subSide} from './pairing.ts';

/** One crossover frequency, judged for one speaker. */
export type CrossoverChoice = Pairing & {
	readonly hertz: number;
	/** Below the speaker's own half-power limit; never leads while another choice is not. */
	readonly belowLimit: boolean;
	/** Drive that the high-pass leaves at the speaker's limit, dB. */
	readonly driveLeftDb: number;
	/** How much less the cone moves than without the high-pass, dB. */
	readonly excursionReliefDb: number;
	/** Octaves above the frequency from which a sub begins to be heard as a place, ≥ 0. */
	readonly localisableOctaves: number;
	/** Sum of all weighted terms; smaller is better. */
	readonly cost: number;
};

/**
Smallest cost first, but what lies below the limit after all that does not; the usual crossover first where it is a draw.
*/
export function inOrder<Choice extends Pick<CrossoverChoice, 'belowLimit' | 'cost' | 'hertz'>>(
	choices: readonly Choice[],
): Choice[] {
	const sorted = [...choices].sort(
		(a, b) =>
			Number(a.belowLimit) - Number(b.belowLimit) ||
			(a.belowLimit ? b.hertz - a.hertz : a.cost - b.cost || a.hertz - b.hertz),
	);
	const usual = sorted.find(({hertz, belowLimit}) => hertz === usualCrossoverHertz && !belowLimit);
	if (!usual || usual.cost > sorted[0]!.cost + drawPoints) return sorted;
	return [usual, ...sorted.filter(choice => choice !== usual)];
}

/** What one choice is whatever the speaker: made once for all channels. */
export type PreparedChoice = {
	readonly hertz: number;
	readonly highPass: AnalogFilter;
	/** Shape (49), hertz. */
	readonly grid: Float64Array;
	readonly sub: ComplexCurve;
};

/** @param choicesHertz - Shape (n), hertz, each > 0. */
export function prepareChoices(
	sub: SubModel,
	management: BassManagement,
	choicesHertz: readonly number[],
): PreparedChoice[] {
	return choicesHertz.map(hertz => {
		const grid = gridAbout(hertz);
		return {
			hertz,
			highPass: shapedFilter('high', management.highPass, hertz),
			grid,
			sub: subSide(subPath(sub, management, hertz), sub.low, grid),
		};
	});
}

/**
Judges every crossover choice for one speaker.

@param speaker - The speaker's low end; without a limit it counts as reaching down without one.
@param choices - Shape (n), from `prepareChoices`.
@param canInvert - Whether the sub's polarity can be turned.
@param judge - One for all speakers of a ranking.
@returns Shape (n), best first.
*/
export function rankCrossovers(
	speaker: BoxData,
	choices: readonly PreparedChoice[],
	canInvert: boolean,
	judge: PairingJudge = pairingJudge(),
): CrossoverChoice[] {
	const box = boxFilter(speaker);
	const limitHz = halfPowerHz(speaker);
	const weights = excursionWeights(speaker);
	const judged = choices.map(({hertz, highPass, grid, sub}) => {
		const pairing = judge(filterResponse(cascade(highPass, box), grid), sub, hertz, canInvert, toleranceMs);
		const driveLeftDb = limitHz === undefined ? driveFreeDb : filterLevelDb(highPass, limitHz);
		const localisableOctaves = Math.max(0, Math.log2(hertz / localisableFromHertz));
		const reliefDb = excursionReliefDb(weights, highPass);
		const cost =
			crossoverWeights.drive * Math.max(0, driveLeftDb - driveFreeDb) +
			crossoverWeights.excursion * Math.max(0, reliefFreeDb - reliefDb) +
			crossoverWeights.localisable * localisableOctaves +
			crossoverWeights.localised * Math.max(0, Math.log2(hertz / localisedFromHertz));
		return {
			...pairing,
			hertz,
			// A data sheet's limit is no sharper than a hertz.
			belowLimit: limitHz !== undefined && hertz < limitHz - 0.5,
			driveLeftDb,
			excursionReliefDb: reliefDb,
			localisableOctaves,
			cost,
		};
	});
	const smoothest = Math.min(...judged.filter(choice => !choice.belowLimit).map(({rippleDb}) => rippleDb));
	return inOrder(
		judged.map(choice => ({
			...choice,
			cost: choice.cost + crossoverWeights.ripple * roughness(choice.rippleDb, smoothest),
		})),
	);
}

/** Ripple beyond what is alike in a room, dB; none where every choice lies below the speaker's limit. */
function roughness(rippleDb: number, smoothestDb: number): number {
	return Number.isFinite(smoothestDb) ? Math.max(0, rippleDb - smoothestDb - rippleAlikeDb) : 0;
}
