import type {Sound} from './waveRead.ts';

/**
A recording from channels that a decoder has laid out already.

@param channels - One array a channel, of one length, full scale = 1.
*/
export function decodedSound(sampleRateHz: number, channels: readonly Float32Array[]): Sound {
	const length = channels.reduce((least, {length: own}) => Math.min(least, own), Number.POSITIVE_INFINITY);
	return {
		sampleRateHz,
		channelCount: channels.length,
		length: Number.isFinite(length) ? length : 0,
		read(channel, from, count) {
			const samples = new Float64Array(count);
			const own = channels[channel];
			if (!own) return samples;
			const first = Math.max(0, from);
			const last = Math.min(own.length, from + count);
			for (let index = first; index < last; index += 1) {
				const value = own[index]!;
				samples[index - from] = Number.isFinite(value) ? value : 0;
			}

			return samples;
		},
	};
}
