import {readWave} from '../../../../source/science/signal/waveRead.ts';
import type {HeardPlaying} from '../../../../source/study/hearing/heardPlaying.ts';
import {type HeardRecording, hearRecording} from '../../../../source/study/hearing/hearRecording.ts';
import type {PlayedRound} from '../../../../source/study/hearing/round.ts';
import {playRound, type Recorder, recordSound, wave16} from './play.ts';
import {type Setup, simulated} from './setup.ts';

/** A phone in the room: noise as phones have it, a clock that is a little slow. */
export const phone: Recorder = {rateHz: 44_100, ppm: -35, noiseDbfs: -64, peak: 0.5, before: 1.3};

/** Runs hearing to its end. */
export function hearSamples(samples: Float64Array, rateHz: number): HeardRecording {
	const read = readWave(wave16(samples, rateHz));
	if (read.kind !== 'sound') throw new Error(read.fault.code);
	const work = hearRecording(read.sound);
	let next = work.next();
	while (!next.done) next = work.next();
	return next.value;
}

export type Recorded = {readonly round: PlayedRound; readonly samples: Float64Array; readonly rateHz: number};

/** A round played in a simulated room and recorded. */
export function recorded(setup: Setup, recorder: Recorder = phone): Recorded {
	const {round, responses} = simulated(setup);
	return {round, samples: recordSound(playRound(round, responses), recorder), rateHz: recorder.rateHz};
}

/** The only playing of a recording. */
export function onlyPlaying({playings}: HeardRecording): HeardPlaying {
	if (playings.length !== 1) throw new Error(`one playing expected, got ${playings.length}`);
	return playings[0]!;
}

/** Codes of a playing's findings, each with what it is about. */
export function codesOf({findings}: HeardPlaying): string[] {
	return findings.map(({code, about}) => [code, ...about].join(' '));
}
