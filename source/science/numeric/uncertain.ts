/** A value with its standard uncertainty, both in the unit of the name that holds it. */
export type Uncertain = {readonly value: number; readonly sigma: number};

/** A change of more than this many standard uncertainties is real (0.3 % of repeats of one value would pass it). */
export const significance = 3;
