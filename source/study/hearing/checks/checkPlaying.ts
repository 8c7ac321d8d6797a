import type {Stretch} from '../clock.ts';
import type {HearingFinding} from '../facts.ts';
import type {HeardPlaying} from '../heardPlaying.ts';
import {channelFindings} from './channels.ts';
import {levelFindings} from './levels.ts';
import {lineFindings} from './lines.ts';
import type {Recorded} from './recorded.ts';
import {recorderFindings} from './recorder.ts';
import {timeFindings} from './time.ts';

/**
A playing with everything that is wrong with it.

@param stretches - Of its sweeps that come twice.
*/
export function checkPlaying(
	heard: HeardPlaying,
	recorded: Recorded,
	stretches: readonly Stretch[],
): HeardPlaying {
	const recorder = recorderFindings(heard, recorded);
	const findings: HearingFinding[] = [
		...recorder.findings,
		...timeFindings(stretches),
		...levelFindings(heard, recorded),
		...channelFindings(heard),
		...lineFindings(heard),
	];
	return {...heard, peak: recorder.peak, findings};
}
