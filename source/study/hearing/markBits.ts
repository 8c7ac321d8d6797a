import {type MatchedFilter, matchedFilter} from '../../science/signal/matchedFilter.ts';
import type {Sound} from '../../science/signal/waveRead.ts';
import {codeBits} from './roundCode.ts';
import {bitChirps, bitStart, markHighestHertz} from './roundMark.ts';

/** A bit is clear where one chirp has this many times the other's power; so many may be unclear, the check decides. */
const clearBit = 1.5;
const mostUnclear = 3;
/**
How far from its time a bit's chirp is looked for, seconds: a mark comes out of all speakers, and the strongest of its sounds may
be another one than that of the chirp ahead.
*/
const slackSeconds = 0.012;

/**
Reads the bits behind a mark's first chirp; each is what fits better about its time.

@returns From the mark's sample to its bits; `undefined` where too many fit neither.
*/
export function bitReader(sound: Sound, channel: number): (sample: number) => boolean[] | undefined {
	const rate = sound.sampleRateHz;
	const slack = Math.round(slackSeconds * rate);
	const [falling, rising] = bitChirps(rate).map(chirp =>
		matchedFilter(chirp, rate, markHighestHertz, chirp.length + 2 * slack),
	) as [MatchedFilter, MatchedFilter];
	// Sounds of one bit that come by several ways add up by power; of the chirp that was not played there is little about its time.
	const powerOf = ({correlate, every}: MatchedFilter, block: Float64Array) => {
		const correlation = correlate(block);
		let power = 0;
		for (let index = 0; index * every <= 2 * slack; index += 1) power += correlation[index]! ** 2;
		return power;
	};
	return sample => {
		const bits: boolean[] = [];
		let unclear = 0;
		while (bits.length < codeBits) {
			const from = Math.round(sample + bitStart(bits.length) * rate) - slack;
			const block = sound.read(channel, from, falling.length);
			const [one, other] = [powerOf(falling, block), powerOf(rising, block)];
			if (Math.max(one, other) < clearBit * Math.min(one, other)) unclear += 1;
			if (unclear > mostUnclear) return undefined;
			bits.push(other > one);
		}

		return bits;
	};
}
