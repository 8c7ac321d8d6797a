/** How samples are stored: interleaved, little-endian. */
export type SampleFormat = {
	readonly channelCount: number;
	readonly sampleRateHz: number;
	/** 8 (unsigned), 16, 24, 32; floats 32 or 64. */
	readonly bits: number;
	readonly isFloat: boolean;
};

/** Writes samples of one channel from a frame on into the array given, as many as it holds; full scale = 1. */
export type SampleDecoder = (channel: number, firstFrame: number, into: Float64Array) => void;

const isLittleEndian = new Uint8Array(Uint16Array.of(1).buffer)[0] === 1;

/**
Reads samples out of interleaved bytes. Whole numbers are divided by 2^(bits − 1); a float that is not finite is silence.

@param data - Whole frames.
*/
export function decoderOf({channelCount, bits, isFloat}: SampleFormat, data: Uint8Array): SampleDecoder {
	const width = bits / 8;
	const frame = width * channelCount;
	const view = new DataView(data.buffer, data.byteOffset, data.byteLength);
	const each =
		(read: (at: number) => number): SampleDecoder =>
		(channel, firstFrame, into) => {
			let at = firstFrame * frame + channel * width;
			for (let index = 0; index < into.length; index += 1) {
				into[index] = read(at);
				at += frame;
			}
		};
	if (isFloat) {
		const finite = (value: number) => (Number.isFinite(value) ? value : 0);
		return bits === 32
			? each(at => finite(view.getFloat32(at, true)))
			: each(at => finite(view.getFloat64(at, true)));
	}

	if (bits === 8) return each(at => (data[at]! - 128) / 128);
	if (bits === 16 && isLittleEndian && data.byteOffset % 2 === 0) {
		// What nearly every recorder writes, without putting bytes together.
		const words = new Int16Array(data.buffer, data.byteOffset, data.byteLength / 2);
		return (channel, firstFrame, into) => {
			let at = firstFrame * channelCount + channel;
			for (let index = 0; index < into.length; index += 1) {
				into[index] = words[at]! / 32_768;
				at += channelCount;
			}
		};
	}

	if (bits === 16) return each(at => (((data[at]! | (data[at + 1]! << 8)) << 16) >> 16) / 32_768);
	if (bits === 24)
		return each(at => (((data[at]! << 8) | (data[at + 1]! << 16) | (data[at + 2]! << 24)) >> 8) / 8_388_608);
	return each(at => view.getInt32(at, true) / 2_147_483_648);
}
