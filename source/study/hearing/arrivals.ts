import {bandEnvelope, peakOffset} from '../../science/signal/envelope.ts';
import type {SoftBand} from '../../science/signal/spectrumParts.ts';
import type {Impulse} from './impulses.ts';

/** When the first sound of a line came, against the sweep's scheduled time. */
export type OnsetFound = {
	readonly ms: number;
	readonly sigmaMs: number;
	/** Level of the first sound, dB re the file. */
	readonly levelDb: number;
	/** First sound above the largest that came before it, dB. */
	readonly aboveBeforeDb: number;
	/** A later sound at least 6 dB stronger: a dipole or a speaker that fires upwards. */
	readonly later?: {readonly ms: number; readonly strongerDb: number};
};

/**
Where the direct sound is told from its reflections, hertz: above what woofer and tweeter share. A crossover of fourth order at
2.4 kHz delays by 0.19 ms below, 0.055 ms at 5 and 0.012 ms at 10 kHz (group delay of its all-pass).
*/
const directBand: SoftBand = [2000, 4000, 7000, 18_000];
const lowBand: SoftBand = [24, 36, 100, 160];
/** The first sound stands this far above all that comes before it, dB. */
const firstAboveDb = 12;
const strongerLaterDb = 6;
/** A stronger sound later than this is the room, not the speaker, ms. */
const laterWithinMs = 15;
/** Below this an arrival is not surer: air moves, and nobody holds a microphone stiller. */
export const leastSigmaMs = 0.03;
/** A sub's onset is no arrival: this wide, ms. */
const subSigmaMs = 2;

/**
The first sound of an impulse response: the first peak of the envelope above 2 kHz that stands 12 dB over everything
before it. A sub is looked at from 36 to 100 Hz, with a wide sigma.

@returns `undefined` where nothing stands out: the line is silent or lost in noise.
*/
export function onsetOf(impulse: Impulse, isSub: boolean): OnsetFound | undefined {
	const {samples, zero, rateHz} = impulse;
	const length = Math.min(samples.length, Math.ceil(zero) + Math.round((isSub ? 0.6 : 0.25) * rateHz));
	const top = Math.min(directBand[3], 0.47 * rateHz, impulse.sweep.law.toHertz);
	if (!isSub && top < 4000) return undefined;
	const band: SoftBand = isSub ? lowBand : [directBand[0], directBand[1], 0.4 * top, top];
	const envelope = bandEnvelope(samples.subarray(0, length), rateHz, band);
	const edge = Math.round((isSub ? 0.03 : 0.004) * rateHz);
	const rise = Math.round((isSub ? 0.02 : 0.0004) * rateHz);
	const needed = 10 ** (firstAboveDb / 20);
	let strongest = edge;
	for (let index = edge; index < length - edge; index += 1)
		if (envelope[index]! > envelope[strongest]!) strongest = index;
	// What is more than 30 dB below the strongest is no speaker's first sound, whatever lies before it.
	const floor = envelope[strongest]! * 10 ** (-30 / 20);
	// Something must have been heard before, to stand out of it: half of what is kept ahead of the sweep's time.
	const from = Math.max(edge + rise, Math.round(zero / 2));
	let before = 0;
	for (let index = edge; index < from - rise; index += 1) before = Math.max(before, envelope[index]!);
	for (let index = from; index < length - edge; index += 1) {
		before = Math.max(before, envelope[index - rise]!);
		const here = envelope[index]!;
		const isPeak = here >= envelope[index - 1]! && here > envelope[index + 1]!;
		if (!isPeak || here < floor || here < needed * before) continue;
		// The rise of one sound may have a peak of its own: what follows at once and stronger is the sound itself.
		let first = index;
		for (let next = index + 1; next <= index + rise; next += 1)
			if (envelope[next]! > envelope[first]!) first = next;
		const size = envelope[first]!;
		const aboveBeforeDb = 20 * Math.log10(size / Math.max(before, 1e-12));
		const ms = (first + peakOffset(envelope, first) - zero) * (1000 / rateHz);
		return {
			ms,
			sigmaMs: isSub ? subSigmaMs : arrivalSigma(aboveBeforeDb),
			levelDb: 20 * Math.log10(size),
			aboveBeforeDb,
			...(!isSub && laterSound(envelope, first, ms, impulse)),
		};
	}

	return undefined;
}

/** Noise moves a peak of bandwidth B by about 1/(2πB·SNR): with 10 kHz and 12 dB some 4 µs, far below what air does. */
function arrivalSigma(aboveBeforeDb: number): number {
	return Math.hypot(leastSigmaMs, 0.05 * 10 ** (-aboveBeforeDb / 20));
}

function laterSound(envelope: Float64Array, first: number, firstMs: number, {zero, rateHz}: Impulse) {
	const end = Math.min(envelope.length - 2, first + Math.round((laterWithinMs / 1000) * rateHz));
	let best = first;
	for (let index = first; index < end; index += 1) if (envelope[index]! > envelope[best]!) best = index;
	const strongerDb = 20 * Math.log10(envelope[best]! / envelope[first]!);
	if (strongerDb < strongerLaterDb) return {};
	const ms = (best + peakOffset(envelope, best) - zero) * (1000 / rateHz);
	return ms > firstMs ? {later: {ms, strongerDb}} : {};
}
