import type {ComparedPlans} from '../../study/placement/comparePlans.ts';
import {movedLines, type SayBoth} from '../said/planChange.ts';

/** What moved, told by the places in both floor plans. */
export type MovedOnPlan = {
	readonly lines: readonly string[];
	/** Names of everything that has its place in both plans: its distances need not be told one by one. */
	readonly names: readonly string[];
};

/**
What moved, where both plans are tied to the same walls; undefined where distances alone can be compared. A distance changes
at both of its ends, a place at the one that was moved.
*/
export function movedOnPlan({change, sameRoom}: ComparedPlans, {newer}: SayBoth): MovedOnPlan | undefined {
	const {turn, conventions, moved, stayed} = change;
	const isTied = conventions.older.length + conventions.newer.length === 0;
	if (!sameRoom || turn || !isTied || moved.length === 0) return undefined;
	return {lines: movedLines(moved, newer), names: [...moved.map(({name}) => name), ...stayed]};
}
