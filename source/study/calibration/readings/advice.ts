import {finding} from '../../../profile/finding.ts';
import {repeatChance} from '../../../profile/practice.ts';
import {normalTail} from '../../../science/numeric/statistics.ts';
import type {MissingFinding} from './facts.ts';

/** How a result would answer to one more reading. */
export type RepeatValue = {
	/** Chance that one more reading moves the stepped value by a step, 0 to 1. */
	readonly chance: number;
	readonly verdict: 'take again' | 'optional' | 'decides nothing';
};

/**
Chance that one more reading moves a stepped value by a step.

The mean of n readings moves by a normal amount with standard deviation σ / √(n(n + 1)) when one more joins it; the
stepped value moves when that passes the border to the next step.

@param errorFromStep - Stepped − exact, less the middle of the others' errors (`middleOfOthers`), in the unit of the step.
@param step - > 0.
@param singleSigma - Standard deviation of one reading, same unit, ≥ 0.
@param repeats - Readings so far, ≥ 1.
*/
export function valueOfRepeat(
	errorFromStep: number,
	step: number,
	singleSigma: number,
	repeats: number,
): RepeatValue {
	const moves = singleSigma / Math.sqrt(repeats * (repeats + 1));
	const up = step / 2 + errorFromStep;
	const down = step / 2 - errorFromStep;
	const chance = moves > 0 ? Math.min(1, normalTail(up / moves) + normalTail(down / moves)) : 0;
	const verdict =
		chance >= repeatChance.worthwhile
			? 'take again'
			: chance <= repeatChance.pointless
				? 'decides nothing'
				: 'optional';
	return {chance, verdict};
}

/**
Middle of the errors of all but one. Values are rounded jointly, so one goes to its next step when its error passes half
a step from there, and not from zero.

@param errors - Stepped − exact by id.
@returns 0 where there is no other.
*/
export function middleOfOthers(errors: ReadonlyMap<string, number>, id: string): number {
	let low = Number.POSITIVE_INFINITY;
	let high = Number.NEGATIVE_INFINITY;
	for (const [other, error] of errors) {
		if (other === id) continue;
		low = Math.min(low, error);
		high = Math.max(high, error);
	}

	return low > high ? 0 : (low + high) / 2;
}

/** Whether the level is worth another reading. After one reading only a note: a quick round takes one of each. */
export function repeatFindings(
	about: string,
	{chance, verdict}: RepeatValue,
	repeats: number,
): MissingFinding[] {
	if (verdict === 'optional') return [];
	if (verdict === 'decides nothing') return [finding('note', 'level-decides-nothing', [about])];
	return [finding(repeats > 1 ? 'advice' : 'note', 'level-take-again', [about], {chance})];
}
