export type FrequencyWeighting = 'A' | 'C' | 'Z';

// Pole frequencies f1 to f4, Hz. IEC 61672-1:2013, Annex E.
const f1 = 20.598997;
const f2 = 107.65265;
const f3 = 737.86223;
const f4 = 12194.217;

const lowAndHigh = (f: number) => (f ** 2 + f1 ** 2) * (f ** 2 + f4 ** 2);
const cGain = (f: number) => (f4 ** 2 * f ** 2) / lowAndHigh(f);
const aGain = (f: number) => (f4 ** 2 * f ** 4) / (lowAndHigh(f) * Math.hypot(f, f2) * Math.hypot(f, f3));
const cGainAt1000 = cGain(1000);
const aGainAt1000 = aGain(1000);

/**
Frequency weighting of a pure tone, relative to 1 kHz.

@param frequencyHz - Hertz, finite and > 0.
@returns dB; 0 at 1 kHz for every weighting.
@throws {RangeError} If the frequency is not finite and positive.
@see IEC 61672-1:2013, Annex E, analytic forms E.1 and E.6 with their pole frequencies.
*/
export function weightingDb(weighting: FrequencyWeighting, frequencyHz: number): number {
	if (!(frequencyHz > 0 && frequencyHz < Number.POSITIVE_INFINITY)) {
		throw new RangeError(`frequencyHz must be finite and > 0 Hz, got ${frequencyHz}`);
	}

	if (weighting === 'Z') return 0;
	return (
		20 * Math.log10(weighting === 'C' ? cGain(frequencyHz) / cGainAt1000 : aGain(frequencyHz) / aGainAt1000)
	);
}
