/** Arrival that subs on one output are timed by: they cannot be set apart, and the middle of the first and the last errs least. */
export function middleOf(arrivalsMs: readonly number[]): number {
	return (Math.min(...arrivalsMs) + Math.max(...arrivalsMs)) / 2;
}
