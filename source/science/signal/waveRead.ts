import {decoderOf, type SampleFormat} from './sampleFormats.ts';

/** A recording that can be read piece by piece: nothing is decoded before it is asked for. */
export type Sound = {
	readonly sampleRateHz: number;
	readonly channelCount: number;
	/** Samples of each channel. */
	readonly length: number;
	/** Bits of a sample as stored; absent where a codec threw that away. */
	readonly bits?: number;
	/** Samples of one channel, full scale = 1; what lies outside the recording is silence. */
	readonly read: (channel: number, from: number, count: number) => Float64Array;
};

/** Why bytes are no usable WAV file, as facts. */
export type WaveFault =
	| {readonly code: 'noWave'; readonly begins: string}
	| {readonly code: 'noFormat'}
	| {readonly code: 'shortFormat'; readonly bytes: number}
	| {readonly code: 'compressed'; readonly format: number}
	| {readonly code: 'noChannels'}
	| {readonly code: 'wrongRate'; readonly sampleRateHz: number}
	| {readonly code: 'wrongBits'; readonly bits: number; readonly isFloat: boolean}
	| {readonly code: 'wrongFrame'; readonly bytes: number; readonly expected: number}
	| {readonly code: 'noData'}
	| {readonly code: 'empty'};

export type WaveRead =
	| {readonly kind: 'sound'; readonly sound: Sound; readonly isCut: boolean}
	| {readonly kind: 'fault'; readonly fault: WaveFault};

const word = (bytes: Uint8Array, at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));
const fault = (it: WaveFault): WaveRead => ({kind: 'fault', fault: it});

/** Whether bytes begin as a WAV file does, whole or broken. */
export function looksLikeWave(bytes: Uint8Array): boolean {
	return ['RIFF', 'RF64', 'BW64', 'RIFX'].includes(word(bytes, 0)) && word(bytes, 8) === 'WAVE';
}

/**
Opens a WAV file: 16, 24 and 32-bit whole numbers, 8-bit ones, 32 and 64-bit floats; plain, EXTENSIBLE and RF64.

Sizes that lie are put right by what is there: a data chunk that claims more than the file holds (recorders that lost
power, streams with 0xFFFFFFFF or 0) reaches to the end of the file. Chunks that are not known, odd sizes with and
without padding, are passed over. A full-scale sample is 2^(bits − 1), as libsndfile takes it.

@param bytes - The file.
@returns The sound, and whether the file ends before its data should; or what is wrong. Never throws.
@see IBM & Microsoft, Multimedia Programming Interface and Data Specifications 1.0 (1991); EBU Tech 3306 (RF64);
Microsoft, Multiple Channel Audio Data and WAVE Files (2001).
*/
export function readWave(bytes: Uint8Array): WaveRead {
	if (bytes.length < 12 || !looksLikeWave(bytes) || word(bytes, 0) === 'RIFX')
		return fault({code: 'noWave', begins: printable(word(bytes, 0))});
	const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
	let format: SampleFormat | undefined;
	let longSize: number | undefined;
	let trouble: WaveFault | undefined;
	let at = 12;
	while (at + 8 <= bytes.length) {
		const name = word(bytes, at);
		const stated = view.getUint32(at + 4, true);
		const from = at + 8;
		if (name === 'ds64' && stated >= 16 && from + 16 <= bytes.length)
			longSize = Number(view.getBigUint64(from + 8, true));
		if (name === 'fmt ' && !format && !trouble) {
			const read = formatOf(view, from, Math.min(stated, bytes.length - from));
			if ('code' in read) trouble = read;
			else format = read;
		}

		if (name === 'data') {
			if (trouble) return fault(trouble);
			if (!format) return fault({code: 'noFormat'});
			return soundOf(bytes, format, from, stated, longSize);
		}

		// Odd chunks are padded, but not by every writer: the byte after is a name only where padding was left out.
		const next = from + stated;
		at = stated % 2 === 1 && !startsChunk(bytes, next) ? next + 1 : next;
	}

	return fault(trouble ?? {code: format ? 'noData' : 'noFormat'});
}

function startsChunk(bytes: Uint8Array, at: number): boolean {
	if (at + 8 > bytes.length) return false;
	for (let index = 0; index < 4; index += 1) {
		const code = bytes[at + index]!;
		if (code < 0x20 || code > 0x7e) return false;
	}

	return true;
}

function formatOf(view: DataView, at: number, size: number): SampleFormat | WaveFault {
	if (size < 16) return {code: 'shortFormat', bytes: Math.max(0, size)};
	let tag = view.getUint16(at, true);
	const channelCount = view.getUint16(at + 2, true);
	const sampleRateHz = view.getUint32(at + 4, true);
	const frameBytes = view.getUint16(at + 12, true);
	const bits = view.getUint16(at + 14, true);
	// The subformat's first two bytes are the tag that EXTENSIBLE stands for.
	if (tag === 0xfffe && size >= 26) tag = view.getUint16(at + 24, true);
	if (tag !== 1 && tag !== 3) return {code: 'compressed', format: tag};
	if (channelCount === 0) return {code: 'noChannels'};
	if (sampleRateHz < 4000 || sampleRateHz > 1_000_000) return {code: 'wrongRate', sampleRateHz};
	const isFloat = tag === 3;
	if (!(isFloat ? [32, 64] : [8, 16, 24, 32]).includes(bits)) return {code: 'wrongBits', bits, isFloat};
	const expected = (bits / 8) * channelCount;
	if (frameBytes !== expected) return {code: 'wrongFrame', bytes: frameBytes, expected};
	return {channelCount, sampleRateHz, bits, isFloat};
}

function soundOf(
	bytes: Uint8Array,
	format: SampleFormat,
	from: number,
	stated: number,
	longSize: number | undefined,
): WaveRead {
	const {channelCount, sampleRateHz, bits} = format;
	const frameBytes = (bits / 8) * channelCount;
	const there = bytes.length - from;
	const isStreamed = stated === 0xffffffff || stated === 0;
	const claimed = stated === 0xffffffff && longSize !== undefined ? longSize : isStreamed ? there : stated;
	const size = Math.min(claimed, there);
	const length = Math.floor(size / frameBytes);
	if (length === 0) return fault({code: 'empty'});
	const data = bytes.subarray(from, from + length * frameBytes);
	const decode = decoderOf(format, data);
	return {
		kind: 'sound',
		isCut: claimed > there,
		sound: {
			sampleRateHz,
			channelCount,
			length,
			bits,
			read: (channel, start, count) => {
				const samples = new Float64Array(count);
				const first = Math.max(0, start);
				const last = Math.min(length, start + count);
				if (last > first) decode(channel, first, samples.subarray(first - start, last - start));
				return samples;
			},
		},
	};
}

const printable = (text: string) => text.replace(/[^\x20-\x7e]/g, '?');
