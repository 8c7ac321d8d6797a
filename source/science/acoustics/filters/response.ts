import type {AnalogFilter} from './analogFilter.ts';

/** A complex curve over frequency: two arrays of one length. */
export type ComplexCurve = {readonly real: Float64Array; readonly imaginary: Float64Array};

/**
Complex response of a filter: gain · (jf)^z / Π (jf − pole).

@param filter - Poles in hertz.
@param frequenciesHz - Shape (n), hertz, each ≥ 0.
@param into - Curve of shape (n) to write to; a new one where not given.
@returns Shape (n), complex, ratio to the pass band for the filters made here.
*/
export function filterResponse(
	filter: AnalogFilter,
	frequenciesHz: Float64Array,
	into: ComplexCurve = {
		real: new Float64Array(frequenciesHz.length),
		imaginary: new Float64Array(frequenciesHz.length),
	},
): ComplexCurve {
	const {poleReal, poleImaginary, zerosAtOrigin, gain} = filter;
	// j^z cycles through 1, j, −1, −j.
	const turn = zerosAtOrigin % 4;
	const turnReal = turn === 0 ? 1 : turn === 2 ? -1 : 0;
	const turnImaginary = turn === 1 ? 1 : turn === 3 ? -1 : 0;
	const poles = poleReal.length;
	for (let index = 0; index < frequenciesHz.length; index += 1) {
		const f = frequenciesHz[index]!;
		let denominatorReal = 1;
		let denominatorImaginary = 0;
		for (let pole = 0; pole < poles; pole += 1) {
			const a = -poleReal[pole]!;
			const b = f - poleImaginary[pole]!;
			const next = denominatorReal * a - denominatorImaginary * b;
			denominatorImaginary = denominatorReal * b + denominatorImaginary * a;
			denominatorReal = next;
		}

		let size = gain;
		for (let zero = 0; zero < zerosAtOrigin; zero += 1) size *= f;
		const scale = size / (denominatorReal * denominatorReal + denominatorImaginary * denominatorImaginary);
		// (turn) / (denominator) = turn · conj(denominator) / |denominator|².
		into.real[index] = scale * (turnReal * denominatorReal + turnImaginary * denominatorImaginary);
		into.imaginary[index] = scale * (turnImaginary * denominatorReal - turnReal * denominatorImaginary);
	}

	return into;
}

/**
Level of a filter's response at one frequency, dB.

@param filter - Poles in hertz.
@param frequencyHz - Hertz, > 0.
*/
export function filterLevelDb(filter: AnalogFilter, frequencyHz: number): number {
	const {real, imaginary} = filterResponse(filter, Float64Array.of(frequencyHz));
	return 20 * Math.log10(Math.hypot(real[0]!, imaginary[0]!));
}
