import type {PlayingName} from '../../study/hearing/playingRow.ts';
import type {HearingProgress} from '../../study/hearing/progress.ts';
import type {HeardReport} from '../../study/hearing/report.ts';
import type {RoundSize} from '../../study/hearing/roundCode.ts';
import type {Arrived} from '../recordings.ts';
import type {Note} from '../walk/roundState.ts';

/**
- `sheet`: the file to play, and how.
- `arrive`: which recording.
- `playings`, `lines`: what was heard, to be accepted.
*/
export type HearingStep = 'sheet' | 'arrive' | 'playings' | 'lines';

/** How far a round is: written, played, heard, understood. Nothing of it is in the profile before it is accepted. */
export type HearingState = {
	/** Whether it is to find settings or to prove them. */
	readonly round: 'first' | 'proof';
	readonly step: HearingStep;
	readonly size: RoundSize;
	/** First line shown, or the row that the cursor stands on. */
	readonly from: number;
	readonly cursor: number;
	/** Folder that is watched, and what lies in it. */
	readonly folder: string;
	readonly arrived: readonly Arrived[];
	/** It is not there, or may not be looked into. */
	readonly isFolderMissing?: boolean;
	/** Paths that were there when the watch began, or were heard since: they are not heard by themselves. */
	readonly known: readonly string[];
	/** A path that is being typed. */
	readonly typed: string;
	/** Recordings that are to be heard, the first of them now; empty where what was heard is only understood anew. */
	readonly waiting: readonly string[];
	readonly progress?: HearingProgress;
	readonly report?: HeardReport;
	/** What the user says of playings, lines and latencies. */
	readonly names: Readonly<Record<number, PlayingName>>;
	readonly leftOut: readonly string[];
	readonly latencies: readonly string[];
	readonly note?: Note;
};

export function hearingStart(
	round: 'first' | 'proof',
	folder: string,
	size: RoundSize = 'two',
): HearingState {
	return {
		round,
		step: 'sheet',
		size,
		from: 0,
		cursor: 0,
		folder,
		arrived: [],
		known: [],
		typed: '',
		waiting: [],
		names: {},
		leftOut: [],
		latencies: [],
	};
}
