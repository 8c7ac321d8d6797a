import {finding} from '../../profile/finding.ts';
import type {Sound} from '../../science/signal/waveRead.ts';
import type {KnownClock} from './cutPlaying.ts';
import type {HearingFinding} from './facts.ts';
import {findPlayings} from './findPlayings.ts';
import type {HeardPlaying} from './heardPlaying.ts';
import {hearPlaying} from './hearPlaying.ts';
import {meanPower} from './noise.ts';
import type {HearingProgress} from './progress.ts';

/** Everything that a recording holds. */
export type HeardRecording = {
	/** Channel of the recording that was listened to: the strongest. */
	readonly channel: number;
	readonly seconds: number;
	readonly playings: readonly HeardPlaying[];
	/** About the recording as a whole; those of a playing are its own. */
	readonly findings: readonly HearingFinding[];
};

/**
Reads a recording of one or more playings: finds them, then hears each. Stops where nobody asks on.

@returns Yields how far it has come, with the playings that are done; ends with all.
*/
export function* hearRecording(
	sound: Sound,
): Generator<HearingProgress & {readonly best: readonly HeardPlaying[]}, HeardRecording> {
	const channel = strongestChannel(sound);
	const playings: HeardPlaying[] = [];
	function* told<Value>(work: Generator<HearingProgress, Value>) {
		let next = work.next();
		while (!next.done) {
			yield {...next.value, best: playings};
			next = work.next();
		}

		return next.value;
	}

	const marks = yield* told(findPlayings(sound, channel));
	let known: KnownClock | undefined;
	for (const mark of marks) {
		const {heard, clock} = yield* told(hearPlaying(sound, channel, mark, known));
		playings.push(heard);
		known = clock;
	}

	const seconds = sound.length / sound.sampleRateHz;
	return {
		channel,
		seconds,
		playings,
		findings: marks.length === 0 ? [finding('problem', 'heard-no-round', [], {seconds})] : [],
	};
}

/** The channel with the most power, by samples from all over the recording. */
function strongestChannel(sound: Sound): number {
	let best = 0;
	let most = -1;
	for (let channel = 0; channel < sound.channelCount; channel += 1) {
		let power = 0;
		for (let part = 0; part < 40; part += 1) {
			const samples = sound.read(channel, Math.floor((sound.length * part) / 40), 2048);
			power += meanPower(samples, 0, samples.length);
		}

		if (power > most) [best, most] = [channel, power];
	}

	return best;
}
