import type {AnalogFilter} from '../../../science/acoustics/filters/analogFilter.ts';
import {type BoxData, boxFilter, halfPowerHz} from '../../../science/acoustics/filters/box.ts';
import {filterResponse} from '../../../science/acoustics/filters/response.ts';

/** 20–500 Hz in sixths of an octave: below and above, cones move little with programme sound. */
const frequenciesHz = Float64Array.from({length: 29}, (_, index) => 20 * 2 ** (index / 6));

/**
Energy of the cone's movement at each frequency for a drive of equal energy in every octave, up to a factor.

A closed box moves as its response over f². In a vented box the port's share comes off about the tuning, here the
half-power frequency as in the fourth-order Butterworth alignment: response · (f² − fb²)/f⁴.

@see R. H. Small, JAES 20 (1972) 798–808 (closed) and JAES 21 (1973) 363–372 (vented), displacement functions.
*/
export function excursionWeights(data: BoxData): Float64Array {
	const {real, imaginary} = filterResponse(boxFilter(data), frequenciesHz);
	const tuningHz = data.box === 'vented' ? (halfPowerHz(data) ?? 0) : 0;
	return frequenciesHz.map((f, index) => {
		const port = data.box === 'vented' ? (f * f - tuningHz * tuningHz) / (f * f) : 1;
		return ((real[index]! ** 2 + imaginary[index]! ** 2) * port ** 2) / f ** 4;
	});
}

/**
How much less the speaker's cone moves with a high-pass in front, with sound of equal energy in every octave.

@param weights - From `excursionWeights`, shape (29).
@param highPass - The receiver's high-pass.
@returns dB, ≥ 0 for any high-pass without a peak.
*/
export function excursionReliefDb(weights: Float64Array, highPass: AnalogFilter): number {
	const {real, imaginary} = filterResponse(highPass, frequenciesHz);
	let before = 0;
	let after = 0;
	for (let index = 0; index < weights.length; index += 1) {
		before += weights[index]!;
		after += weights[index]! * (real[index]! ** 2 + imaginary[index]! ** 2);
	}

	return 10 * Math.log10(before / after);
}
