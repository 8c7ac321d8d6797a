import {type FrequencyWeighting, weightingDb} from './weighting.ts';

/** Spectrum of a test signal: pink noise between two frequencies, or one tone. */
export type TestSpectrum =
	| {readonly kind: 'pink'; readonly fromHertz: number; readonly toHertz: number}
	| {readonly kind: 'tone'; readonly hertz: number};

/** Even; the curve is smooth, so Simpson's rule is good to 1e-6 dB over ten octaves. */
const intervals = 256;

/**
How much a weighted meter reads above (+) or below (−) the unweighted level of a test signal.

Pink noise has equal power per logarithmic step of frequency, so the weighting's power is averaged over lg f by
Simpson's rule. Pink noise whose band has no width counts as a tone.

@param spectrum - Frequencies in hertz, each finite and > 0; the order of the two band limits does not matter.
@returns dB; subtract it from the reading. Pink 28.2–112.2 Hz: C −1.23, A −24.3.
@throws {RangeError} If a frequency is not finite and positive.
@see IEC 61672-1:2013, Annex E, for the weighting itself.
*/
export function weightingOfSpectrum(weighting: FrequencyWeighting, spectrum: TestSpectrum): number {
	if (spectrum.kind === 'tone') return weightingDb(weighting, spectrum.hertz);
	const from = Math.log(spectrum.fromHertz);
	const width = Math.log(spectrum.toHertz) - from;
	if (width === 0) return weightingDb(weighting, spectrum.fromHertz);
	let sum = 0;
	for (let index = 0; index <= intervals; index++) {
		const frequencyHz = Math.exp(from + (width * index) / intervals);
		const isEnd = index === 0 || index === intervals;
		sum += (isEnd ? 1 : index % 2 === 1 ? 4 : 2) * 10 ** (weightingDb(weighting, frequencyHz) / 10);
	}

	return 10 * Math.log10(sum / (3 * intervals));
}
