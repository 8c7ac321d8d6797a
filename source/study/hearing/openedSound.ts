import {finding} from '../../profile/finding.ts';
import {decodedSound} from '../../science/signal/decodedSound.ts';
import {looksLikeWave, readWave, type Sound} from '../../science/signal/waveRead.ts';
import type {HearingFinding} from './facts.ts';

/** A recording opened, or why it cannot be. */
export type OpenedSound = {
	/** Base name and digest of the file. */
	readonly name: string;
	readonly sha256: string;
	readonly sound?: Sound;
	readonly findings: readonly HearingFinding[];
};

/** What a decoder makes of bytes: samples of each channel, full scale = 1; `undefined` where it knows them not. */
export type Decoder = (
	bytes: Uint8Array,
) => Promise<{readonly sampleRateHz: number; readonly channels: readonly Float32Array[]} | undefined>;

/** Opens a recording: WAV by the reader here, anything else by a decoder. */
export async function openedSound(
	{name, sha256, bytes}: {readonly name: string; readonly sha256: string; readonly bytes: Uint8Array},
	decode: Decoder,
): Promise<OpenedSound> {
	const wave = readWave(bytes);
	if (wave.kind === 'sound') return {name, sha256, sound: wave.sound, findings: []};
	const fault = looksLikeWave(bytes) ? wave.fault : ({code: 'noDecoder'} as const);
	const decoded = looksLikeWave(bytes) ? undefined : await decode(bytes);
	if (decoded)
		return {name, sha256, sound: decodedSound(decoded.sampleRateHz, decoded.channels), findings: []};
	return {name, sha256, findings: [finding('problem', 'heard-file-unreadable', [], {fault})]};
}
