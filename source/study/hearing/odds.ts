/** Shares of simulated rooms, whole percent: louder or softer by 0.3 dB and more than by distances alone. */
export type RecordedOdds = {
	/** Mean of the fronts. */
	readonly wonPercent: number;
	readonly lostPercent: number;
	/** The centre alone. */
	readonly centreLostPercent: number;
};

/**
What a blend by recordings did in the project's own simulated rooms (`npm run truth -- hear --range fresh`), verified by one more playing, in rooms not used while
building. Where the centre is not recorded it can lose unheard.

Made on 2026-11-26 with responses that are 40 dB from the truth.
*/
export const oddsOfRecording: {
	readonly rooms: number;
	/** Every latency and polarity stated right; latencies unstated and polarity turned in half of the rooms. */
	readonly threeFronts: {readonly known: RecordedOdds; readonly hidden: RecordedOdds};
	/** Front left and right alone. */
	readonly twoFronts: {readonly known: RecordedOdds; readonly hidden: RecordedOdds};
	/** Three fronts and the LFE sweep in one playing, nothing changed for it; with low-passes up to 5 % and the LFE level up to 0.5 dB off in half of the rooms. */
	readonly onePlaying: {readonly rooms: number; readonly known: RecordedOdds; readonly hidden: RecordedOdds};
} = {
	rooms: 80,
	threeFronts: {
		known: {wonPercent: 91, lostPercent: 0, centreLostPercent: 0},
		hidden: {wonPercent: 93, lostPercent: 0, centreLostPercent: 0},
	},
	twoFronts: {
		known: {wonPercent: 88, lostPercent: 0, centreLostPercent: 26},
		hidden: {wonPercent: 94, lostPercent: 0, centreLostPercent: 13},
	},
	onePlaying: {
		rooms: 250,
		known: {wonPercent: 65, lostPercent: 0, centreLostPercent: 0},
		hidden: {wonPercent: 58, lostPercent: 0, centreLostPercent: 3},
	},
};
