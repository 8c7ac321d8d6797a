import {mainChannels} from '../../../profile/ask/lines.ts';
import {seatSigmaDb, unlikeSigmaDb} from '../../../profile/practice.ts';
import type {Profile} from '../../../profile/types.ts';

/**
What the points that were read, and the band, cannot tell of the level that a seat hears from a speaker, dB.

@param points - How many points around the seat were read, ≥ 1.
*/
export function seatTermDb(profile: Profile, id: string, points: number): number {
	const byPoints = points >= 3 ? seatSigmaDb.several : points === 2 ? seatSigmaDb.two : seatSigmaDb.one;
	return isUnlike(profile, id) ? Math.hypot(byPoints, unlikeSigmaDb) : byPoints;
}

/** Whether a speaker's stated data differ from those of the first speaker; what is not stated counts as alike. */
function isUnlike(profile: Profile, id: string): boolean {
	const mains = mainChannels(profile);
	const [first, own] = [mains[0]?.speaker, mains.find(main => main.id === id)?.speaker];
	if (!first || !own) return false;
	return (['sensitivityDb', 'lowLimitHertz', 'impedanceOhms', 'box'] as const).some(
		key => first[key] !== undefined && own[key] !== undefined && first[key] !== own[key],
	);
}
