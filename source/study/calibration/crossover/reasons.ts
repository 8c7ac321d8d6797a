import {finding} from '../../../profile/finding.ts';
import {localisableFromHertz, localisedFromHertz, toleranceMs} from '../../../profile/practice.ts';
import type {CrossoverReason, CrossoverStep} from './facts.ts';
import type {CrossoverChoice} from './rank.ts';

/**
Why a choice stands where it does.

@param limitHertz - The speaker's half-power limit.
@param isAssumed - Whether that limit is only the usual one of a small box.
*/
export function choiceReasons(
	choice: CrossoverChoice,
	limitHertz: number,
	isAssumed: boolean,
): CrossoverReason[] {
	const {hertz, belowLimit, driveLeftDb, excursionReliefDb, rippleDb, toleranceDb, subDelayMs, inverted} =
		choice;
	const limit = {limitHertz, isAssumed};
	return [
		belowLimit
			? finding('note', 'hole-below-limit', [], {...limit, hertz})
			: finding('note', 'drive-at-limit', [], {...limit, takenOffDb: -driveLeftDb}),
		finding('note', 'cone-spared', [], {reliefDb: excursionReliefDb}),
		finding('note', 'ripple-on-paper', [], {
			rippleDb,
			fromHertz: hertz / 2,
			toHertz: hertz * 2,
			subDelayMs,
			isInverted: inverted,
		}),
		finding('note', 'ripple-when-late', [], {lateMs: toleranceMs, addedDb: toleranceDb}),
		...(hertz > localisableFromHertz
			? [
					finding('note', 'sub-located', [], {
						aboveHertz: hertz > localisedFromHertz ? localisedFromHertz : localisableFromHertz,
						isPlain: hertz > localisedFromHertz,
					}),
				]
			: []),
	];
}

/** What changes when a neighbouring choice is taken instead. */
export function stepChanges(from: CrossoverChoice, to: CrossoverChoice): CrossoverStep {
	return finding('note', 'crossover-step', [], {
		hertz: to.hertz,
		rippleDb: to.rippleDb - from.rippleDb,
		driveDb: to.driveLeftDb - from.driveLeftDb,
		coneDb: from.excursionReliefDb - to.excursionReliefDb,
		subDelayMs: to.subDelayMs - from.subDelayMs,
		isBelowLimit: to.belowLimit,
		isLocated: to.hertz > localisableFromHertz && to.hertz > from.hertz,
	});
}
