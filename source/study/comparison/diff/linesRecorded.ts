import type {Profile} from '../../../profile/types.ts';
import type {LevelCurve} from '../../hearing/curveFigures.ts';
import {profileCurves} from '../../hearing/profileCurves.ts';

/** The newest recording of one line at one seat, with everything that sounds when it plays. */
export type RecordedLine = {
	readonly source: string;
	readonly seat: string;
	readonly sha256: string;
	readonly curve: LevelCurve;
	readonly isMicrophoneKnown: boolean;
	readonly levelDb?: number;
	readonly bassLevelDb?: number;
	readonly decaySeconds?: number;
};

/**
Recorded lines of a profile by line and seat.

@param rename - From the profile's ids to those that lines are compared by.
*/
export function linesRecorded(
	profile: Pick<Profile, 'date' | 'recordings' | 'responses'>,
	rename: (id: string) => string,
): Map<string, RecordedLine> {
	const lines = new Map<string, RecordedLine>();
	for (const {part, source, seat, sha256, curve, isMicrophoneKnown, ...figures} of profileCurves(profile)) {
		if (part !== 'all') continue;
		const {levelDb, bassLevelDb, decaySeconds} = figures;
		const [line, place] = [rename(source), rename(seat)];
		// The newest stands last.
		lines.set(`${line} ${place}`, {
			source: line,
			seat: place,
			sha256,
			curve,
			isMicrophoneKnown,
			...(levelDb !== undefined && {levelDb}),
			...(bassLevelDb !== undefined && {bassLevelDb}),
			...(decaySeconds !== undefined && {decaySeconds}),
		});
	}

	return lines;
}
