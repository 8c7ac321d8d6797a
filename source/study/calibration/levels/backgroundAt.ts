import type {Profile} from '../../../profile/types.ts';
import {energyMean} from '../../../science/acoustics/decibels.ts';

/** Energy mean of the background at a seat with one weighting, dB; undefined where it was not read. */
export function backgroundAt(profile: Profile, seat: string, weighting: string): number | undefined {
	const levels = (profile.meter ?? [])
		.filter(
			reading =>
				reading.source === 'background' &&
				reading.seat === seat &&
				reading.weighting === weighting &&
				!reading.setAside,
		)
		.map(({decibels}) => decibels);
	return levels.length === 0 ? undefined : energyMean(levels);
}
