/** What a reading of the second round says by its last looks. */
export type Judgement = {
	/**
	- `met`: the last look is within the limit.
	- `again`: the last look is beyond it, once: the meter is to be put down anew and read again.
	- `missed`: the last two looks are beyond it on the same side.
	*/
	readonly verdict: 'met' | 'again' | 'missed';
	/** Mean residual of the looks that the verdict rests on, dB. */
	readonly residualDb: number;
	/** How many looks that are. */
	readonly count: number;
};

/**
Judges one row of the second round. A look that differs from the last one in kind no longer counts: a reading taken again
after a mend replaces the ones before it.

@param residuals - Read minus predicted, dB, in the order in which they were read; one at least.
@param limitDb - Largest residual that counts as met. What is no number is never met.
*/
export function judgeLooks(residuals: readonly number[], limitDb: number): Judgement {
	const sideOf = (residual: number) => (Math.abs(residual) <= limitDb ? 0 : residual > 0 ? 1 : -1);
	const last = sideOf(residuals.at(-1)!);
	let first = residuals.length - 1;
	while (first > 0 && sideOf(residuals[first - 1]!) === last) first--;
	const counted = residuals.slice(first);
	const residualDb = counted.reduce((sum, residual) => sum + residual, 0) / counted.length;
	const verdict = last === 0 ? 'met' : counted.length >= 2 ? 'missed' : 'again';
	return {verdict, residualDb, count: counted.length};
}
