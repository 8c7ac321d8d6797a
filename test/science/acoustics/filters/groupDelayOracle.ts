import type {AnalogFilter} from '../../../../source/science/acoustics/filters/analogFilter.ts';

/**
Group delay of a filter: minus the derivative of its phase, in closed form from the poles.
Zeros at zero frequency turn the phase by a constant and so add nothing.

@param filter - Poles in hertz.
@param frequenciesHz - Shape (n), hertz.
@returns Shape (n), milliseconds.
@see Oppenheim & Schafer, Discrete-Time Signal Processing, section 5.3, for the sum over poles (from memory).
*/
export function groupDelayMs(filter: AnalogFilter, frequenciesHz: Float64Array): Float64Array {
	return frequenciesHz.map(f => {
		let sum = 0;
		for (const [pole, real] of filter.poleReal.entries()) {
			sum -= real / (real * real + (f - filter.poleImaginary[pole]!) ** 2);
		}

		return (1000 * sum) / (2 * Math.PI);
	});
}
