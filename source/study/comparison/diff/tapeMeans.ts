import type {Profile, TapeReading} from '../../../profile/types.ts';
import type {Uncertain} from '../../calibration/result.ts';
import {tapeSigmaMetres} from '../../survey/sigma.ts';

/** One distance's two ends in a fixed order, so that a tape pulled either way has one key. */
export function pairKey(a: string, b: string): string {
	return a < b ? `${a}|${b}` : `${b}|${a}`;
}

/**
Every tape distance of a profile as the weighted mean of its readings; readings set aside are left out.

@param rename - Gives each end the name under which the means are kept.
@returns Means in metres, keyed by `pairKey` of the two ends.
*/
export function tapeMeans(
	profile: Profile,
	rename: (end: string) => string = end => end,
): Map<string, Uncertain & {readonly count: number}> {
	const groups = new Map<string, TapeReading[]>();
	for (const reading of profile.tape ?? []) {
		if (reading.setAside) continue;
		const key = pairKey(rename(reading.from), rename(reading.to));
		const group = groups.get(key);
		if (group) group.push(reading);
		else groups.set(key, [reading]);
	}

	const mean = (readings: readonly TapeReading[]) => {
		let weights = 0;
		let sum = 0;
		for (const reading of readings) {
			const weight = 1 / tapeSigmaMetres(reading, profile.kit) ** 2;
			weights += weight;
			sum += weight * reading.metres;
		}

		return {value: sum / weights, sigma: 1 / Math.sqrt(weights), count: readings.length};
	};

	return new Map([...groups].map(([key, readings]) => [key, mean(readings)]));
}
