import {codeBits} from './roundCode.ts';

/** A rising chirp to be found by, then one short chirp a bit: rising for 1, falling for 0. */
const syncSeconds = 0.4;
const gapSeconds = 0.12;
const bitSeconds = 0.09;
const chirpSeconds = 0.08;
/** Where nearly every speaker plays and rooms are quiet, hertz. */
const lowHertz = 700;
const highHertz = 3700;

/** A mark holds nothing above this, hertz: its edges are a tenth of its chirps. */
export const markHighestHertz = highHertz + 200;

/** Length of a mark, seconds. */
export const markSeconds = syncSeconds + gapSeconds + codeBits * bitSeconds;

/** A chirp whose frequency moves evenly, swelling and fading over a tenth of it. @returns Peak 1. */
function chirp(rateHz: number, seconds: number, isRising: boolean): Float64Array {
	const length = Math.round(seconds * rateHz);
	const edge = 0.1 * seconds;
	const [from, to] = isRising ? [lowHertz, highHertz] : [highHertz, lowHertz];
	return Float64Array.from({length}, (_, index) => {
		const time = index / rateHz;
		const near = Math.min(time, seconds - time);
		const size = near >= edge ? 1 : 0.5 - 0.5 * Math.cos((Math.PI * near) / edge);
		return size * Math.sin(2 * Math.PI * (from + ((to - from) * time) / (2 * seconds)) * time);
	});
}

/** The chirp that a mark begins with. */
export function syncChirp(rateHz: number): Float64Array {
	return chirp(rateHz, syncSeconds, true);
}

/** The chirps of a bit 0 and a bit 1. */
export function bitChirps(rateHz: number): readonly [Float64Array, Float64Array] {
	return [chirp(rateHz, chirpSeconds, false), chirp(rateHz, chirpSeconds, true)];
}

/** When a bit's chirp starts, seconds from the start of the mark. */
export function bitStart(index: number): number {
	return syncSeconds + gapSeconds + index * bitSeconds;
}

/** A whole mark. @returns Peak 1. */
export function markSamples(bits: readonly boolean[], rateHz: number): Float64Array {
	const samples = new Float64Array(Math.ceil(markSeconds * rateHz));
	samples.set(syncChirp(rateHz));
	const chirps = bitChirps(rateHz);
	for (const [index, bit] of bits.entries())
		samples.set(chirps[bit ? 1 : 0], Math.round(bitStart(index) * rateHz));
	return samples;
}
