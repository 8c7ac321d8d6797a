import {peakOffset} from '../../science/signal/envelope.ts';
import {realTransform} from '../../science/signal/fourier.ts';
import {powerOfTwoFrom} from '../../science/signal/spectrumParts.ts';
import type {Sound} from '../../science/signal/waveRead.ts';
import type {HearingProgress} from './progress.ts';
import {codeBits, type RoundSize, readRoundCode} from './roundCode.ts';
import {bitChirps, bitStart, markSeconds, syncChirp} from './roundMark.ts';

/** A mark found in a recording. */
export type FoundMark = {
	/** Where the mark starts, samples, between samples too. */
	readonly atSample: number;
	readonly size: RoundSize;
	/** Channels that sound, by their places in the file. */
	readonly channels: readonly string[];
};

/** Share of the energy about it that the chirp must explain; noise and music stay below a tenth of it. */
const leastShare = 0.03;
/** A bit is clear where one chirp fits this much better than the other; so many may be unclear, the check decides. */
const clearBit = 1.25;
const mostUnclear = 3;
/** A peak stands this many times above the mean size of the correlation about it. */
const leastContrast = 8;

/**
Every mark in a recording, by matched filter, read for what the round says of itself.

@param channel - Channel of the recording that is listened to.
@returns In the order of time.
*/
export function* findPlayings(sound: Sound, channel: number): Generator<HearingProgress, FoundMark[]> {
	const rate = sound.sampleRateHz;
	const chirp = syncChirp(rate);
	const size = powerOfTwoFrom(Math.max(2 ** 16, 4 * chirp.length));
	const padded = new Float64Array(size);
	padded.set(chirp);
	const transform = realTransform(size);
	const template = transform.forward(padded);
	const spectrum = new Float64Array(size + 2);
	const correlation = new Float64Array(size);
	const energy = chirp.reduce((sum, value) => sum + value * value, 0);
	const hop = size - chirp.length;
	const found: FoundMark[] = [];
	let last = Number.NEGATIVE_INFINITY;
	for (let from = -chirp.length; from < sound.length; from += hop) {
		yield {step: 'finding', done: Math.max(0, from), of: sound.length};
		const block = sound.read(channel, from, size);
		transform.forward(block, spectrum);
		for (let index = 0; index < spectrum.length; index += 2) {
			const a = spectrum[index]!;
			const b = spectrum[index + 1]!;
			const c = template[index]!;
			const d = template[index + 1]!;
			spectrum[index] = a * c + b * d;
			spectrum[index + 1] = b * c - a * d;
		}

		transform.inverse(spectrum, correlation);
		for (const at of peaksOf(block, correlation, chirp.length, energy, hop)) {
			const sample = from + at + peakOffset(absAround(correlation, at), 2);
			// One mark has one strongest path; what follows within it are echoes and its own bits.
			if (sample - last < markSeconds * rate) continue;
			const code = readBits(sound, channel, sample);
			const read = code && readRoundCode(code);
			if (!read) continue;
			last = sample;
			found.push({atSample: sample, ...read});
		}
	}

	return found;
}

const absAround = (values: Float64Array, at: number) =>
	Array.from({length: 5}, (_, index) => Math.abs(values[at - 2 + index] ?? 0));

/** Places where the correlation is the largest within half a chirp and explains enough of what is there. */
function peaksOf(
	block: Float64Array,
	correlation: Float64Array,
	length: number,
	energy: number,
	hop: number,
): number[] {
	let mean = 0;
	for (let index = 0; index < hop; index += 1) mean += Math.abs(correlation[index]!);
	mean /= hop;
	let local = 0;
	for (let index = 0; index < length; index += 1) local += block[index]! ** 2;
	const reach = Math.floor(length / 2);
	const peaks: number[] = [];
	let best = -1;
	for (let index = 0; index < hop; index += 1) {
		const value = Math.abs(correlation[index]!);
		if (value > leastContrast * mean && value * value > leastShare * energy * local) {
			if (best >= 0 && index - best > reach) {
				peaks.push(best);
				best = index;
			} else if (best < 0 || value > Math.abs(correlation[best]!)) best = index;
		}

		local += (block[index + length] ?? 0) ** 2 - block[index]! ** 2;
	}

	if (best >= 0) peaks.push(best);
	return peaks;
}

/** The bits behind a mark's first chirp; each is what fits better within 3 ms of its time. */
function readBits(sound: Sound, channel: number, sample: number): boolean[] | undefined {
	const rate = sound.sampleRateHz;
	const slack = Math.round(0.003 * rate);
	const chirps = bitChirps(rate);
	const bits: boolean[] = [];
	let unclear = 0;
	while (bits.length < codeBits) {
		const from = Math.round(sample + bitStart(bits.length) * rate) - slack;
		const heard = sound.read(channel, from, chirps[0].length + 2 * slack);
		const falling = largestMatch(heard, chirps[0]);
		const rising = largestMatch(heard, chirps[1]);
		if (Math.max(falling, rising) < clearBit * Math.min(falling, rising)) unclear += 1;
		if (unclear > mostUnclear) return undefined;
		bits.push(rising > falling);
	}

	return bits;
}

function largestMatch(heard: Float64Array, chirp: Float64Array): number {
	let best = 0;
	for (let lag = 0; lag + chirp.length <= heard.length; lag += 1) {
		let sum = 0;
		for (let index = 0; index < chirp.length; index += 1) sum += heard[lag + index]! * chirp[index]!;
		best = Math.max(best, Math.abs(sum));
	}

	return best;
}
