import {type BlendWay, type Odds, oddsOfWays} from './odds.ts';

/** A way to choose, with what it takes and what it did in simulated rooms. */
export type OfferedWay = {
	readonly way: BlendWay;
	readonly readings: number;
	/** Times that something is turned at a box. */
	readonly changes: number;
	readonly minutes: number;
	readonly known: {readonly fronts: Odds; readonly centre: Odds};
	readonly hidden: {readonly fronts: Odds; readonly centre: Odds};
	readonly rooms: number;
};

/** Minutes of a reading with its tone or noise, and of a change at a box with the walk there. Common practice, no source. */
const minutesOfReading = 0.6;
const minutesOfChange = 2;
const settingsSearched = 10;

/** Minutes of so many readings and changes, to the next five. */
export function blendMinutes(readings: number, changes: number): number {
	return Math.ceil((readings * minutesOfReading + changes * minutesOfChange) / 5) * 5;
}

/** What each way takes with so many front speakers. */
export function offeredWays(fronts: number): OfferedWay[] {
	if (fronts === 0) return [];
	const verification = fronts === 1 ? 4 : 8;
	const tones = 9 * fronts;
	const took: ReadonlyArray<readonly [BlendWay, number, number]> = [
		['tones', tones + verification, 3],
		['search', settingsSearched + verification, settingsSearched + 1],
	];
	return took.map(([way, readings, changes]) => ({
		way,
		readings,
		changes,
		minutes: blendMinutes(readings, changes),
		...oddsOfWays[way],
	}));
}
