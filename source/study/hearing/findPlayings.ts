import {peakOffset} from '../../science/signal/envelope.ts';
import {matchedFilter} from '../../science/signal/matchedFilter.ts';
import {thinned} from '../../science/signal/thinned.ts';
import type {Sound} from '../../science/signal/waveRead.ts';
import {bitReader} from './markBits.ts';
import type {HearingProgress} from './progress.ts';
import {type RoundSize, readRoundCode} from './roundCode.ts';
import {markHighestHertz, markSeconds, syncChirp} from './roundMark.ts';

/** A mark found in a recording. */
export type FoundMark = {
	/** Where the mark starts, samples, between samples too. */
	readonly atSample: number;
	readonly size: RoundSize;
	/** Channels that sound, by their places in the file. */
	readonly channels: readonly string[];
};

/**
Share of the energy about it that the chirp must explain: in simulated rooms of 0.6 s, all speakers playing it, one sound explains
3 %; the largest of some thousand values of noise 0.7 % (mean 1/(bandwidth · length)).
*/
const leastShare = 0.012;
/** A peak stands this many times above the mean of the correlation about it. */
const leastContrast = 5;

/**
Every mark in a recording, by matched filter, read for what the round says of itself.

@param channel - Channel of the recording that is listened to.
@returns In the order of time.
*/
export function* findPlayings(sound: Sound, channel: number): Generator<HearingProgress, FoundMark[]> {
	const rate = sound.sampleRateHz;
	// Found at a rate that the mark asks for; the template is thinned as the recording is, so that they fit.
	let every = 1;
	while (rate / (2 * every) > 2.5 * markHighestHertz) every *= 2;
	const chirp = thinned(syncChirp(rate), every);
	const filter = matchedFilter(chirp, rate / every, markHighestHertz, Math.max(2 ** 14, 2 * chirp.length));
	const energy = chirp.reduce((sum, value) => sum + value * value, 0);
	const hops = Math.floor((filter.length - chirp.length) / filter.every);
	const bits = bitReader(sound, channel);
	const found: FoundMark[] = [];
	let last = Number.NEGATIVE_INFINITY;
	for (let from = -chirp.length * every; from < sound.length; from += hops * filter.every * every) {
		yield {step: 'finding', done: Math.max(0, from), of: sound.length};
		const block = thinned(sound.read(channel, from, filter.length * every), every);
		const correlation = filter.correlate(block);
		for (const at of peaksOf(block, correlation.subarray(0, hops), chirp.length, energy, filter.every)) {
			const sample = from + every * filter.every * (at + peakOffset(correlation, at));
			// One mark has one strongest path; what follows within it are echoes and its own bits.
			if (sample - last < markSeconds * rate) continue;
			const code = bits(sample);
			const read = code && readRoundCode(code);
			if (!read) continue;
			last = sample;
			found.push({atSample: sample, ...read});
		}
	}

	return found;
}

/**
Places where the correlation is the largest within half a chirp and explains enough of what is there.

@param length - Of the chirp, samples of the block.
@param energy - Of the chirp.
@param every - Samples of the block for one value of the correlation.
*/
function peaksOf(
	block: Float64Array,
	correlation: Float64Array,
	length: number,
	energy: number,
	every: number,
): number[] {
	let mean = 0;
	for (let index = 0; index < correlation.length; index += 1) mean += correlation[index]!;
	mean /= correlation.length;
	let local = 0;
	for (let index = 0; index < length; index += 1) local += block[index]! * block[index]!;
	const reach = Math.floor(length / 2 / every);
	const peaks: number[] = [];
	let best = -1;
	for (let index = 0; index < correlation.length; index += 1) {
		const value = correlation[index]!;
		if (value > leastContrast * mean && value * value > leastShare * energy * local) {
			if (best >= 0 && index - best > reach) {
				peaks.push(best);
				best = index;
			} else if (best < 0 || value > correlation[best]!) best = index;
		}

		for (let at = index * every; at < (index + 1) * every; at += 1) {
			const enters = block[at + length] ?? 0;
			local += enters * enters - block[at]! * block[at]!;
		}
	}

	if (best >= 0) peaks.push(best);
	return peaks;
}
