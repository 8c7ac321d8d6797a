/** Runs work that tells how far it is to its end, and returns its result. */
export function finished<Result>(work: Iterator<unknown, Result>): Result {
	for (;;) {
		const next = work.next();
		if (next.done) return next.value;
	}
}
