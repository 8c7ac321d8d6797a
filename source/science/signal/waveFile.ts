export type WaveContent = {
	/** Samples of each channel, full scale = 1, all of one length; `undefined` is silence. At least one has samples. */
	readonly channels: ReadonlyArray<Float64Array | undefined>;
	readonly sampleRateHz: number;
	/** Speaker mask; 0 says nothing of places. */
	readonly mask: number;
};

/** Channels that are made when they are written, one at a time: long ones all at once fill the memory. */
export type LateWaveContent = Omit<WaveContent, 'channels'> & {
	readonly channels: ReadonlyArray<(() => Float64Array) | undefined>;
	/** Samples of each channel. */
	readonly length: number;
};

const headerBytes = 68;
const fullScale = 2 ** 23;
/** PCM as a GUID: 00000001-0000-0010-8000-00AA00389B71. */
const pcmTail = [0x00, 0x00, 0x00, 0x00, 0x10, 0x00, 0x80, 0x00, 0x00, 0xaa, 0x00, 0x38, 0x9b, 0x71];

/**
A WAV file of 24-bit samples as WAVE_FORMAT_EXTENSIBLE, which more than 16 bits or two channels ask for.

A full-scale sample of 1 is 2^23 − 1, −1 is −2^23; values beyond are held there.

@param room - Memory to use where it is large enough, such as the bytes of the file before once they are written: large
fresh arrays cost more time than filling them.
@returns The bytes of the file.
@throws {RangeError} If there are no samples, lengths differ, or the file would pass 4 GiB.
@see Microsoft, Multiple Channel Audio Data and WAVE Files (2001); IBM & Microsoft, Multimedia Programming Interface
and Data Specifications 1.0 (1991), for the chunks.
*/
export function waveFile(
	content: WaveContent | LateWaveContent,
	room?: Uint8Array<ArrayBuffer>,
): Uint8Array<ArrayBuffer> {
	const {channels, sampleRateHz, mask} = content;
	const stated = 'length' in content ? content.length : undefined;
	const known = channels.map(samples => (typeof samples === 'object' ? samples.length : undefined));
	const length = stated ?? known.find(each => each !== undefined) ?? 0;
	if (length === 0 || channels.every(samples => samples === undefined))
		throw new RangeError('channels must hold at least one with samples, got none');
	const wrong = known.findIndex(each => each !== undefined && each !== length);
	if (wrong >= 0) throw new RangeError(`channels[${wrong}] must hold ${length} samples, got ${known[wrong]}`);
	const frameBytes = 3 * channels.length;
	const dataBytes = length * frameBytes;
	const padding = dataBytes % 2;
	if (headerBytes + dataBytes + padding >= 2 ** 32)
		throw new RangeError(`the file must be smaller than 4 GiB, got ${headerBytes + dataBytes} bytes`);
	const total = headerBytes + dataBytes + padding;
	const bytes =
		room && room.buffer.byteLength >= total ? new Uint8Array(room.buffer, 0, total) : new Uint8Array(total);
	if (room) bytes.fill(0);
	const view = new DataView(bytes.buffer);
	const text = (at: number, word: string) => {
		for (let index = 0; index < 4; index += 1) bytes[at + index] = word.charCodeAt(index);
	};

	text(0, 'RIFF');
	view.setUint32(4, bytes.length - 8, true);
	text(8, 'WAVE');
	text(12, 'fmt ');
	view.setUint32(16, 40, true);
	view.setUint16(20, 0xfffe, true);
	view.setUint16(22, channels.length, true);
	view.setUint32(24, sampleRateHz, true);
	view.setUint32(28, sampleRateHz * frameBytes, true);
	view.setUint16(32, frameBytes, true);
	view.setUint16(34, 24, true);
	view.setUint16(36, 22, true);
	view.setUint16(38, 24, true);
	view.setUint32(40, mask, true);
	view.setUint16(44, 1, true);
	bytes.set(pcmTail, 46);
	text(60, 'data');
	view.setUint32(64, dataBytes, true);
	for (const [channel, given] of channels.entries()) {
		if (!given) continue;
		const samples = typeof given === 'function' ? given() : given;
		if (samples.length !== length)
			throw new RangeError(`channels[${channel}] must hold ${length} samples, got ${samples.length}`);
		let at = headerBytes + 3 * channel;
		for (let index = 0; index < length; index += 1) {
			// Half steps go up, as Math.round does it; in range the whole part is one machine instruction.
			const scaled = samples[index]! * fullScale + 0.5;
			const value =
				scaled >= fullScale ? fullScale - 1 : scaled < -fullScale ? -fullScale : Math.floor(scaled) | 0;
			bytes[at] = value;
			bytes[at + 1] = value >> 8;
			bytes[at + 2] = value >> 16;
			at += frameBytes;
		}
	}

	return bytes;
}
