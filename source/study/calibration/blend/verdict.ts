/** Readings of each noise before and after. */
export const readingsEach = 2;

/** What became of a setting that was tried; open while not all was read. */
export type TrialVerdict = 'kept' | 'put back' | 'open';
