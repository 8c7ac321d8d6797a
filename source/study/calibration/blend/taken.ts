import {settingsInForce} from '../../../profile/ask/settings.ts';
import type {Profile} from '../../../profile/types.ts';
import {groupKey, sounding} from './groups.ts';
import {groupStanding, type StandingSet} from './standing.ts';

/**
How many readings of a source at a tone and added delay the profile holds, of those that still count: taken with the
crossover, and with the speakers of each side set to each other, as they stand.

@param sides - One or two groups that sound.
@param addedMs - Delay added on purpose, ms.
*/
export function countTaken(
	profile: Profile,
	standing: StandingSet | undefined,
	seat: string,
	sides: ReadonlyArray<readonly string[]>,
	hertz: number,
	addedMs: number,
): number {
	const ids = sides.flat();
	const counts = (set: StandingSet | undefined) =>
		!set ||
		!standing ||
		sides.every(
			side => groupStanding(profile, set, side).balance === groupStanding(profile, standing, side).balance,
		);
	return (profile.meter ?? []).filter(reading => {
		if (reading.setAside || reading.seat !== seat || reading.signal?.kind !== 'tone') return false;
		if (reading.signal.hertz !== hertz || Math.abs((reading.addedDelayMs ?? 0) - addedMs) >= 0.01)
			return false;
		const found = sounding(profile, reading.source);
		return (
			found !== undefined &&
			groupKey([...found.mains, ...found.subs]) === groupKey(ids) &&
			counts(settingsInForce(profile, reading))
		);
	}).length;
}
