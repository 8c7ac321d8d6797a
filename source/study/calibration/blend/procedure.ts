import {settingsInForce} from '../../../profile/ask/settings.ts';
import type {Profile} from '../../../profile/types.ts';
import {type CollectedPair, collectPairs, meterSigmaDb} from './collect.ts';
import {type Fitted, fitPair} from './fitPair.ts';
import {pairId} from './groups.ts';
import {blendPaths} from './paths.ts';
import {type SeparatingReading, separatingReading} from './separate.ts';
import {addableDelays} from './setting.ts';
import {type BlendStep, blendCautions, pairSteps, plannedPairs} from './steps.ts';
import {tonesToRead} from './tonesToRead.ts';

/** Delay for the block of readings with a known one: near a quarter of a period, as the boxes can make it. */
function laterDelay(profile: Profile, groups: CollectedPair): number {
	const quarter = 250 / groups.paths.crossoverHertz;
	return addableDelays(profile, groups, groups.paths.crossoverHertz).reduce(
		(best, delay) =>
			Math.abs(Math.abs(delay) - quarter) < Math.abs(Math.abs(best) - quarter) - 1e-6 ||
			(Math.abs(Math.abs(delay) - Math.abs(best)) < 1e-6 && delay > best)
				? delay
				: best,
		0,
	);
}

/** A reading repeated this often will not part the answers any more. */
const triesAtMost = 3;

function isTried({usable}: Fitted, {hertz, addedDelayMs}: SeparatingReading): boolean {
	const both = usable.find(tone => tone.hertz === hertz)?.both ?? [];
	return both.filter(({delayMs}) => Math.abs(delayMs - addedDelayMs) < 0.01).length >= triesAtMost;
}

/**
The guided procedure at the seat: every reading in order, with what to plug or mute, and whether it was taken.

@param profile - Read: channels, subs, receiver, bass processor, settings, meter.
@returns Steps of all planned pairs, subs among themselves first; the reading that separates answers comes last.
*/
export function blendProcedure(profile: Profile): {
	readonly cautions: readonly string[];
	readonly steps: readonly BlendStep[];
} {
	return {cautions: blendCautions, steps: procedureSteps(profile, collectPairs(profile).pairs.map(fitPair))};
}

/** Steps of all planned pairs, from pairs that are fitted already. */
export function procedureSteps(profile: Profile, fits: readonly Fitted[]): BlendStep[] {
	const latest = (profile.meter ?? []).findLast(
		reading => reading.signal?.kind === 'tone' && settingsInForce(profile, reading),
	);
	const standing = latest && settingsInForce(profile, latest);
	return plannedPairs(profile).flatMap(groups => {
		const id = pairId(groups);
		const fitted = fits.find(({pair}) => pair.id === id);
		const paths = fitted?.pair.paths ?? blendPaths(profile, standing, groups);
		const pair: CollectedPair = fitted?.pair ?? {...groups, id, paths, tones: [], remarks: []};
		const steps = pairSteps(
			profile,
			groups,
			tonesToRead(profile, groups, paths.crossoverHertz),
			laterDelay(profile, pair),
			standing,
		);
		if (!fitted || steps.some(({taken}) => taken === 0)) return steps;
		const next = separatingReading(
			fitted.usable,
			fitted.fit.minima,
			addableDelays(profile, pair, paths.crossoverHertz),
			meterSigmaDb(profile),
		);
		if (!next || isTried(fitted, next)) return steps;
		const template = steps.find(({part}) => part === 'both')!;
		return [
			...steps,
			{
				...template,
				id: `${id} separate ${next.hertz} ${next.addedDelayMs}`,
				part: 'separate' as const,
				hertz: next.hertz,
				addedDelayMs: next.addedDelayMs,
				why: `Tells ${fitted.fit.minima.length} answers apart that the readings so far allow alike.`,
				taken: 0,
			},
		];
	});
}

/**
What to read next for the blend, in order: the steps of the guided procedure that were not taken yet.

@returns Empty when there is no sub, or when nothing is left to read.
*/
export function nextBlendReadings(profile: Profile): readonly BlendStep[] {
	return blendProcedure(profile).steps.filter(({taken}) => taken === 0);
}
