import {finding} from '../../../profile/finding.ts';
import {median} from '../../../science/numeric/statistics.ts';
import type {HearingFinding} from '../facts.ts';
import type {HeardLine} from '../heardPlaying.ts';

/** Below the middle by so much on every line, dB: after Dial-in bass and middle are about as loud. */
const cutFromDb = 6;

/**
A recorder that cuts the bass, as most phones do: on every line that reaches down by its subs, 28 to 112 Hz lie far below the
middle. Where its curve was taken off nothing of it is left to find.
*/
export function lowCutFindings(
	lines: readonly Pick<HeardLine, 'isSub' | 'levelDb' | 'bassLevelDb'>[],
): HearingFinding[] {
	const below = lines.flatMap(({isSub, levelDb, bassLevelDb}) =>
		isSub || levelDb === undefined ? [] : [levelDb - bassLevelDb],
	);
	if (below.length === 0 || Math.min(...below) < cutFromDb) return [];
	return [finding('doubt', 'heard-low-cut', [], {belowDb: median(below)})];
}
