/**
An analogue filter by its poles, its zeros at zero frequency and its gain, in the frequency plane s = jf, hertz.

Every filter of bass management and every box alignment used here has zeros at zero frequency only, so that this
form holds them all, and a chain of filters is the concatenation of their poles.
*/
export type AnalogFilter = {
	/** Real parts of the poles, hertz; all negative in a stable filter. */
	readonly poleReal: readonly number[];
	/** Imaginary parts of the poles, hertz. */
	readonly poleImaginary: readonly number[];
	/** Number of zeros at zero frequency: 0 in a low-pass, the order in a high-pass. */
	readonly zerosAtOrigin: number;
	readonly gain: number;
};

/** The filter that changes nothing. */
export const throughFilter: AnalogFilter = {poleReal: [], poleImaginary: [], zerosAtOrigin: 0, gain: 1};

/**
Filters one after the other.

@param filters - Any number; none gives the filter that changes nothing.
@returns One filter with all poles and zeros, gains multiplied.
*/
export function cascade(...filters: readonly AnalogFilter[]): AnalogFilter {
	return {
		poleReal: filters.flatMap(filter => filter.poleReal),
		poleImaginary: filters.flatMap(filter => filter.poleImaginary),
		zerosAtOrigin: filters.reduce((sum, filter) => sum + filter.zerosAtOrigin, 0),
		gain: filters.reduce((product, filter) => product * filter.gain, 1),
	};
}
