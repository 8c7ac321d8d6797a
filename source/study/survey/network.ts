import {type TapeEnds, tapeEndsOf} from './observations.ts';
import {type NetworkPoint, pointsOf, type SurveyInput} from './points.ts';

/** What an adjustment works on. */
export type SurveyNetwork = {
	readonly profile: SurveyInput;
	readonly points: readonly NetworkPoint[];
	readonly ends: TapeEnds;
	/** Offsets of room dimensions that the profile states exactly. */
	readonly exactDimensions: ReadonlySet<number>;
};

/** Offsets of the dimensions that are taken as exact. */
function exactDimensionsOf(profile: SurveyInput, points: number): Set<number> {
	const {widthMetres, lengthMetres, ceiling} = profile.room;
	const exact = [widthMetres, lengthMetres, ceiling?.kind === 'flat' ? ceiling.heightMetres : undefined];
	return new Set([0, 1, 2].filter(axis => exact[axis] !== undefined).map(axis => points * 3 + axis));
}

/** What a profile's tape readings are readings of. */
export function surveyNetwork(profile: SurveyInput): SurveyNetwork {
	const points = pointsOf(profile);
	return {
		profile,
		points,
		ends: tapeEndsOf(profile, points),
		exactDimensions: exactDimensionsOf(profile, points.length),
	};
}
