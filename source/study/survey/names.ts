import {nameOf} from '../../profile/names.ts';
import type {Profile, TapeReading} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';

/** A length in the profile's own unit. */
export function lengthText(profile: Profile, metres: number, stepMetres?: number): string {
	return formatLength(metres, profile.lengthUnit ?? 'm', stepMetres === undefined ? {} : {stepMetres});
}

/** Two ends, such as "Front left to left wall". */
export function endsText(profile: Profile, {from, to}: {readonly from: string; readonly to: string}): string {
	return `${nameOf(profile, from)} to ${nameOf(profile, to)}`;
}

/** A reading with its value, such as "Front left to left wall, 0.92 m". */
export function readingText(profile: Profile, reading: TapeReading): string {
	return `${endsText(profile, reading)}, ${lengthText(profile, reading.metres)}`;
}
