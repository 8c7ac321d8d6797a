/**
Changes of this size count alike, so that "larger first" can hold metres against decibels: 3 cm of distance, the
0.1 ms that sound needs for it, half a decibel, and 10 Hz of crossover.
*/
export const changeScale = {metres: 0.03, ms: 0.1, dB: 0.5, Hz: 10} as const;

/** Changes without a size of their own, on the same scale: they change what every other value means. */
export const kindWeight = {addedOrRemoved: 100, polarity: 60, replaced: 30, renamed: 5, stated: 1} as const;
