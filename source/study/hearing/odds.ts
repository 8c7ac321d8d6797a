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
	/**
	The fronts and the LFE sweep in one playing, nothing changed for it; low-passes up to 5 % and the LFE level up to 0.5 dB off
	where something is hidden (`npm run truth -- one --range fresh`).
	*/
	readonly onePlaying: {
		readonly rooms: number;
		readonly threeFronts: {readonly known: RecordedOdds; readonly hidden: RecordedOdds};
		readonly twoFronts: {readonly known: RecordedOdds; readonly hidden: RecordedOdds};
	};
} = {
	rooms: 250,
	threeFronts: {
		known: {wonPercent: 89, lostPercent: 0, centreLostPercent: 0},
		hidden: {wonPercent: 95, lostPercent: 0, centreLostPercent: 0},
	},
	twoFronts: {
		known: {wonPercent: 84, lostPercent: 0, centreLostPercent: 27},
		hidden: {wonPercent: 95, lostPercent: 0, centreLostPercent: 7},
	},
	onePlaying: {
		rooms: 250,
		threeFronts: {
			known: {wonPercent: 62, lostPercent: 0, centreLostPercent: 0},
			hidden: {wonPercent: 53, lostPercent: 0, centreLostPercent: 0},
		},
		twoFronts: {
			known: {wonPercent: 53, lostPercent: 0, centreLostPercent: 24},
			hidden: {wonPercent: 54, lostPercent: 0, centreLostPercent: 15},
		},
	},
};
