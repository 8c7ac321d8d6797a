/** Ways to make subs and speakers add up with a meter. */
export type BlendWay = 'tones' | 'search';

/** Shares of simulated rooms, whole percent: louder or softer by 0.3 dB and more than by distances alone. */
export type Odds = {readonly wonPercent: number; readonly lostPercent: number};

/**
What each way did in the project's own simulated rooms (`npm run truth`), on the mean of the fronts and on the centre.

Made on 2026-11-26 in rooms not used while building (`--range fresh`).
*/
export const oddsOfWays: Readonly<
	Record<
		BlendWay,
		{
			/** Every latency and polarity stated right. */
			readonly known: {readonly fronts: Odds; readonly centre: Odds};
			/** Latencies unstated, polarity turned in half of the rooms. */
			readonly hidden: {readonly fronts: Odds; readonly centre: Odds};
			readonly rooms: number;
		}
	>
> = {
	tones: {
		known: {fronts: {wonPercent: 26, lostPercent: 0}, centre: {wonPercent: 25, lostPercent: 1}},
		hidden: {fronts: {wonPercent: 42, lostPercent: 2}, centre: {wonPercent: 42, lostPercent: 1}},
		rooms: 250,
	},
	search: {
		known: {fronts: {wonPercent: 26, lostPercent: 1}, centre: {wonPercent: 22, lostPercent: 1}},
		hidden: {fronts: {wonPercent: 38, lostPercent: 2}, centre: {wonPercent: 39, lostPercent: 3}},
		rooms: 250,
	},
};
