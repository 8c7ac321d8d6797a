import {markOf} from './profiles/read.ts';
import {readWholeFile} from './wholeFile.ts';

/** More than this no recorder makes of a round: three hours in two channels of 24 bits at 48 kHz, bytes. */
const largestSound = 3 * 2 ** 30;

/** A recording's bytes and what it is known by. */
export type SoundFile = {
	readonly bytes: Uint8Array;
	/** Base name, for tables and the profile. */
	readonly name: string;
	readonly sha256: string;
};

/**
Reads a recording whole.

@throws {Trouble} If it is missing, may not be read, is a folder, is empty, or is larger than any recording of a round.
*/
export function readSoundFile(path: string): SoundFile {
	const {bytes, name} = readWholeFile(path, {
		what: 'a recording',
		ifEmpty: 'Copy the recording again.',
		largestBytes: largestSound,
		ifTooLarge: 'has more than 3 GiB. Cut it into parts, each with whole playings.',
	});
	return {
		bytes,
		name,
		get sha256() {
			return markOf(bytes);
		},
	};
}

/**
Decodes what phones save: m4a, ogg, opus, mp3, flac. The decoder is loaded only now.

@returns Samples of each channel, full scale = 1; `undefined` where no decoder knows the bytes or they are broken.
*/
export async function decodeSound(
	bytes: Uint8Array,
): Promise<{readonly sampleRateHz: number; readonly channels: readonly Float32Array[]} | undefined> {
	try {
		const {default: decode} = await import('audio-decode');
		const {channelData, sampleRate} = await decode(bytes);
		if (!(channelData.length > 0 && channelData[0]!.length > 0 && sampleRate >= 4000)) return undefined;
		return {sampleRateHz: sampleRate, channels: channelData};
	} catch {
		// Whatever a decoder throws means the same to the person: it cannot be read.
		return undefined;
	}
}
