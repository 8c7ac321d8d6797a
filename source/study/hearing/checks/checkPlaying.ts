import type {Sound} from '../../../science/signal/waveRead.ts';
import type {HearingFinding} from '../facts.ts';
import type {HeardPlaying} from '../heardPlaying.ts';
import {channelFindings} from './channels.ts';
import {levelFindings} from './levels.ts';
import {lineFindings} from './lines.ts';
import {recorderFindings} from './recorder.ts';
import {timeFindings} from './time.ts';

/** A playing with everything that is wrong with it. */
export function checkPlaying(
	heard: HeardPlaying,
	sound: Sound,
	channel: number,
	startSample: number,
	rateHz: number,
): HeardPlaying {
	const recorded = {sound, channel, startSample, rateHz};
	const recorder = recorderFindings(heard, recorded);
	const findings: HearingFinding[] = [
		...recorder.findings,
		...timeFindings(heard),
		...levelFindings(heard, recorded),
		...channelFindings(heard),
		...lineFindings(heard),
	];
	return {...heard, peak: recorder.peak, findings};
}
