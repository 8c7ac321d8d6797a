/** Shares of simulated rooms, whole percent: louder or softer by 0.3 dB and more than by distances alone. */
export type RecordedOdds = {readonly wonPercent: number; readonly lostPercent: number};

/**
What a blend by recordings over three fronts did in the project's own simulated rooms (`npm run truth -- hear`), on the mean
of the fronts, in rooms not used while building.
*/
export const oddsOfRecording: {
	/** Every latency and polarity stated right. */
	readonly known: RecordedOdds;
	/** Latencies unstated, polarity turned in half of the rooms. */
	readonly hidden: RecordedOdds;
	readonly rooms: number;
} = {
	known: {wonPercent: 90, lostPercent: 0},
	hidden: {wonPercent: 96, lostPercent: 0},
	rooms: 22,
};
