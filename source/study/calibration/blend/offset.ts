import type {Offset} from './bestState.ts';
import type {Relation} from './subsState.ts';
import {isSameRelation} from './subsState.ts';

/** All that tells one way of setting the subs from another. */
export type SubsOffset = Offset & {readonly relation: Relation};

/** How far delays may differ and still count as the same, ms. */
export type OffsetTolerances = {
	/** Of all subs together against the fronts. */
	readonly togetherMs: number;
	/** Of one sub's line against another's. */
	readonly apartMs: number;
};

/** Whether two offsets are the same but for what steps of the boxes leave. */
export function isSameOffset(
	one: SubsOffset,
	other: SubsOffset,
	{togetherMs, apartMs}: OffsetTolerances,
): boolean {
	return (
		one.inverted === other.inverted &&
		Math.abs(one.laterMs - other.laterMs) <= togetherMs &&
		isSameRelation(one.relation, other.relation, apartMs)
	);
}
