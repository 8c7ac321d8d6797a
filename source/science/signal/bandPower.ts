import {type AnalyticTransform, analyticTransform, type RealTransform, realTransform} from './fourier.ts';
import {powerOfTwoFrom} from './spectrumParts.ts';

/** A band by its gain; nothing passes outside the two frequencies. */
export type BandGain = {
	readonly fromHertz: number;
	readonly toHertz: number;
	/** Amplitude at a frequency, 0 to 1. */
	readonly gainAt: (hertz: number) => number;
};

/** Power of a band over time, at a rate that the band's width asks for. */
export type BandPower = {readonly powers: Float64Array; readonly rateHz: number};

/** What it takes to split signals of one length: shared by many of them. */
export type SplitterTools = {
	readonly transform: RealTransform;
	readonly gains: Map<BandGain, Float64Array>;
	/** Ways back to time, by length. */
	readonly back: Map<number, AnalyticTransform>;
};

/** @param length - Of the longest signal, samples. */
export function splitterTools(length: number): SplitterTools {
	return {transform: realTransform(powerOfTwoFrom(length)), gains: new Map(), back: new Map()};
}

/**
Power of a signal within bands: half the square of the analytic signal, which is the square of the signal without its ripple at
twice the frequency. Each band is brought back to time at as few samples as hold it, twice its width.

@param samples - Shape (n); brought to frequency once, for any number of bands.
@param tools - For signals no shorter than this one, all of one rate.
@returns From a band to its power, sample 0 at the time of the signal's; without delay. What lies behind the signal's end is cut off.
@see Bendat & Piersol, Random Data, chapter 13, for the analytic signal.
*/
export function powerSplitter(
	samples: Float64Array,
	sampleRateHz: number,
	{transform, gains, back}: SplitterTools = splitterTools(samples.length),
): (band: BandGain) => BandPower {
	const {length} = transform;
	const padded = new Float64Array(length);
	padded.set(samples);
	const spectrum = transform.forward(padded);
	const binHertz = sampleRateHz / length;
	return band => {
		const first = Math.max(1, Math.ceil(band.fromHertz / binHertz));
		const last = Math.min(length / 2 - 1, Math.floor(band.toHertz / binHertz));
		const bins = Math.max(0, last - first + 1);
		// Twice the bins of positive frequency make the analytic signal; half its square is the power.
		let gain = gains.get(band);
		if (!gain) {
			gain = new Float64Array(bins);
			for (let index = 0; index < bins; index += 1)
				gain[index] = (Math.SQRT2 / length) * band.gainAt((first + index) * binHertz);
			gains.set(band, gain);
		}

		const size = Math.min(length, powerOfTwoFrom(2 * bins));
		const analytic = back.get(size) ?? analyticTransform(size);
		back.set(size, analytic);
		const within = analytic.spectrum;
		within.fill(0, 2 * bins);
		for (let index = 0; index < bins; index += 1) {
			within[2 * index] = gain[index]! * spectrum[2 * (first + index)]!;
			within[2 * index + 1] = gain[index]! * spectrum[2 * (first + index) + 1]!;
		}

		return {
			powers: analytic.power().subarray(0, Math.ceil((samples.length * size) / length)),
			rateHz: size * binHertz,
		};
	};
}

/**
Energy between times, from a power: each sample stands for the time half way to its neighbours.

@returns From seconds to the energy before them, in samples of the power's rate.
*/
export function energyBefore({powers, rateHz}: BandPower): (seconds: number) => number {
	const sums = new Float64Array(powers.length + 1);
	for (let index = 0; index < powers.length; index += 1) sums[index + 1] = sums[index]! + powers[index]!;
	return seconds => {
		const place = Math.min(powers.length, Math.max(0, seconds * rateHz + 0.5));
		const index = Math.min(powers.length - 1, Math.floor(place));
		return sums[index]! + (place - index) * (powers[index] ?? 0);
	};
}
