/** The current format of profile files. */
export const currentFormat = 1;
