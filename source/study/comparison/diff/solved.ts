import type {Profile} from '../../../profile/types.ts';
import type {Solution} from '../../calibration/result.ts';

/** A profile with what was computed from it. */
export type Solved = {readonly profile: Profile; readonly solution: Solution};
