import {type Comparison, compareBass} from './judged.ts';
import type {FoundArrangement} from './search.ts';

/** One rung: the best arrangement for one more thing to lift, with what it adds. */
export type Rung = {
	readonly arrangement: FoundArrangement;
	/** Against the room as it stands, settings included in both. */
	readonly againstNow: Comparison;
	/** Against the best rung below that is worth it. */
	readonly againstBelow: Comparison;
};

export type Ladder = {
	readonly rungs: readonly Rung[];
	/** The rung with the fewest things to lift beyond which nothing better is sure; 0 is "as it stands". */
	readonly advised: number;
};

/** The rungs of a search, from nothing lifted up, and which of them is worth its work for sure. */
export function ladderOf(found: readonly FoundArrangement[], seats: number): Ladder {
	let advised = 0;
	const rungs = found.map((arrangement, i): Rung => {
		const againstNow = compareBass(found[0]!.judged, arrangement.judged, seats);
		const againstBelow = compareBass(found[i === 0 ? 0 : advised]!.judged, arrangement.judged, seats);
		if (i > 0 && againstBelow.certainty === 'sure' && againstBelow.gainDb > 0) advised = i;
		return {arrangement, againstNow, againstBelow};
	});
	return {rungs, advised};
}
