import {decodeSound, readSoundFile} from '../platform/soundFile.ts';
import {finding} from '../profile/finding.ts';
import {decodedSound} from '../science/signal/decodedSound.ts';
import {looksLikeWave, readWave, type Sound} from '../science/signal/waveRead.ts';
import type {HearingFinding} from '../study/hearing/facts.ts';

/** A recording opened, or why it cannot be. */
export type OpenedSound = {
	readonly name: string;
	readonly sha256: string;
	readonly sound: Sound | undefined;
	readonly findings: readonly HearingFinding[];
};

/**
Opens a recording: WAV by the reader here, anything else by a decoder that is loaded for it.

@throws {Trouble} If the file is missing or may not be read.
*/
export async function openSound(path: string): Promise<OpenedSound> {
	const {bytes, name, sha256} = readSoundFile(path);
	const wave = readWave(bytes);
	if (wave.kind === 'sound') return {name, sha256, sound: wave.sound, findings: []};
	if (!looksLikeWave(bytes)) {
		const decoded = await decodeSound(bytes);
		if (decoded)
			return {name, sha256, sound: decodedSound(decoded.sampleRateHz, decoded.channels), findings: []};
		return {
			name,
			sha256,
			sound: undefined,
			findings: [finding('problem', 'heard-file-unreadable', [], {fault: {code: 'noDecoder'}})],
		};
	}

	return {
		name,
		sha256,
		sound: undefined,
		findings: [finding('problem', 'heard-file-unreadable', [], {fault: wave.fault})],
	};
}
