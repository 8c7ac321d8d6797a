import type {Profile} from '../../profile/types.ts';
import type {HearingProgress} from './progress.ts';
import type {HeardReport} from './report.ts';
import type {HearingAsk} from './understand.ts';

/** What is asked of whoever hears on another thread. */
export type HearingOrder =
	/** Hear a recording, then tell what all heard so far say. */
	| {readonly kind: 'hear'; readonly path: string; readonly profile: Profile; readonly ask: HearingAsk}
	/** Tell it once more: for another profile, or understood otherwise. */
	| {readonly kind: 'understand'; readonly profile: Profile; readonly ask: HearingAsk};

/** What comes back. */
export type HearingNews =
	| (HearingProgress & {readonly kind: 'progress'; readonly path: string})
	/** What was heard so far; `isDone` once nothing is left to hear. */
	| {readonly kind: 'report'; readonly report: HeardReport; readonly isDone: boolean}
	/** A recording that could not be opened, or a fault of the program. */
	| {readonly kind: 'trouble'; readonly path?: string; readonly text: string};
