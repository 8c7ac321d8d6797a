import {proofLooks} from '../../../profile/practice.ts';

/** What a reading of the second round says by its last looks. */
export type Judgement = {
	/**
	- `met`: clearly within the limit, or within it by the mean of all looks that are worth taking.
	- `again`: too near the limit, or beyond it once: the meter is to be put down anew and read again.
	- `missed`: two looks or more lie beyond the limit by their mean, clearly or after the last one worth taking.
	*/
	readonly verdict: 'met' | 'again' | 'missed';
	/** Mean residual of the looks that the verdict rests on, dB. */
	readonly residualDb: number;
	/** How many looks that are. */
	readonly count: number;
};

/** @param residuals - Of looks at the same thing, dB. What is no number is never met. */
function verdictOf(residuals: readonly number[], limitDb: number): Judgement {
	const residualDb = residuals.reduce((sum, residual) => sum + residual, 0) / residuals.length;
	const share = Math.abs(residualDb) / limitDb;
	const isLast = residuals.length >= proofLooks.most;
	const verdict =
		share <= (isLast ? 1 : proofLooks.clearlyWithin)
			? 'met'
			: isLast || (residuals.length >= 2 && share > proofLooks.clearlyBeyond)
				? 'missed'
				: 'again';
	return {verdict, residualDb, count: residuals.length};
}

/**
Judges one row of the second round by the mean of its looks, each with the meter put down anew.

What is read after a row was settled replaces what settled it, as after a mend; so does a look so far from those before
it that the settings cannot be the same.

@param residuals - Read minus predicted, dB, in the order in which they were read; one at least.
@param limitDb - Largest mean residual that counts as met.
@see Wald, Sequential Tests of Statistical Hypotheses, Ann. Math. Statist. 16 (1945): readings go on while neither side is clear.
*/
export function judgeLooks(residuals: readonly number[], limitDb: number): Judgement {
	let first = 0;
	let judged = verdictOf(residuals.slice(0, 1), limitDb);
	for (let next = 1; next < residuals.length; next++) {
		const isOther = Math.abs(residuals[next]! - judged.residualDb) > proofLooks.mended * limitDb;
		if (judged.verdict !== 'again' || isOther) first = next;
		judged = verdictOf(residuals.slice(first, next + 1), limitDb);
	}

	return judged;
}
