import {tmpdir} from 'node:os';

/** A folder that is often on another disk than the user's, for what has nowhere else to go. */
export const roomyFolder = (): string => tmpdir();
