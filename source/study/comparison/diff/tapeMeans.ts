import type {Profile, TapeReading} from '../../../profile/types.ts';
import type {Uncertain} from '../../../science/numeric/uncertain.ts';
import {holdingOf} from '../../survey/holding.ts';
import {tapeSigmaMetres} from '../../survey/sigma.ts';

/** One distance's mean, metres, between its ends in the order of `pairKey`. */
export type TapeMean = Uncertain & {readonly from: string; readonly to: string; readonly count: number};

const sortedEnds = (a: string, b: string): readonly [string, string] => (a < b ? [a, b] : [b, a]);

/** One distance's two ends in a fixed order, so that a tape pulled either way has one key. */
export function pairKey(a: string, b: string): string {
	return sortedEnds(a, b).join('|');
}

/**
Every tape distance of a profile as the weighted mean of its readings; readings set aside are left out.

@param rename - Gives each end the name under which the means are kept.
@returns Means in metres, keyed by `pairKey` of the two ends.
*/
export function tapeMeans(
	profile: Profile,
	rename: (end: string) => string = end => end,
): Map<string, TapeMean> {
	const holding = holdingOf(profile);
	const groups = new Map<string, {ends: readonly [string, string]; readings: TapeReading[]}>();
	for (const reading of profile.tape ?? []) {
		if (reading.setAside) continue;
		const ends = sortedEnds(rename(reading.from), rename(reading.to));
		const key = pairKey(...ends);
		const group = groups.get(key);
		if (group) group.readings.push(reading);
		else groups.set(key, {ends, readings: [reading]});
	}

	const mean = ({ends: [from, to], readings}: {ends: readonly [string, string]; readings: TapeReading[]}) => {
		let weights = 0;
		let sum = 0;
		for (const reading of readings) {
			const weight = 1 / tapeSigmaMetres(reading, holding) ** 2;
			weights += weight;
			sum += weight * reading.metres;
		}

		return {from, to, value: sum / weights, sigma: 1 / Math.sqrt(weights), count: readings.length};
	};

	return new Map([...groups].map(([key, group]) => [key, mean(group)]));
}
