import {emptySpectrum, product, type Spectrum} from './spectrum.ts';

type Frequencies = ArrayLike<number>;

/**
One analog second-order section at s = jf/f0: `1/(1 + s/Q + s²)`, or the same times s² for a high-pass.
*/
function section(frequencies: Frequencies, corner: number, q: number, isHigh: boolean): Spectrum {
	const out = emptySpectrum(frequencies.length);
	for (let index = 0; index < frequencies.length; index++) {
		const x = frequencies[index]! / corner;
		const real = 1 - x * x;
		const imaginary = x / q;
		const gain = (isHigh ? -x * x : 1) / (real * real + imaginary * imaginary);
		out.re[index] = gain * real;
		out.im[index] = -gain * imaginary;
	}

	return out;
}

/** Qs of the sections of an even-order Butterworth filter: 1/(2·cos θ) with θ at odd multiples of π/2n. */
const butterworthQs = (order: number): number[] =>
	Array.from(
		{length: order / 2},
		(_, index) => 1 / (2 * Math.cos(((2 * index + 1) * Math.PI) / (2 * order))),
	);

const cascade = (frequencies: Frequencies, corner: number, qs: readonly number[], isHigh: boolean) =>
	product(...(qs.map(q => section(frequencies, corner, q, isHigh)) as [Spectrum, ...Spectrum[]]));

export const butterworthHigh = (frequencies: Frequencies, corner: number, order: 2 | 4): Spectrum =>
	cascade(frequencies, corner, butterworthQs(order), true);
export const butterworthLow = (frequencies: Frequencies, corner: number, order: 2 | 4): Spectrum =>
	cascade(frequencies, corner, butterworthQs(order), false);
/** A closed box: second order with its total Q. */
export const closedBox = (frequencies: Frequencies, corner: number, q: number): Spectrum =>
	section(frequencies, corner, q, true);
/** Linkwitz-Riley of fourth order: two Butterworth sections of second order. */
export const linkwitzRileyLow = (frequencies: Frequencies, corner: number): Spectrum =>
	cascade(frequencies, corner, [Math.SQRT1_2, Math.SQRT1_2], false);
export const linkwitzRileyHigh = (frequencies: Frequencies, corner: number): Spectrum =>
	cascade(frequencies, corner, [Math.SQRT1_2, Math.SQRT1_2], true);

export type TwoWay = {readonly hertz: number; readonly order: 2 | 4; readonly tweeterTurned: boolean};

/** Woofer and tweeter of one speaker at one point: Linkwitz-Riley of second or fourth order. */
export function twoWay(frequencies: Frequencies, {hertz, order, tweeterTurned}: TwoWay): Spectrum {
	const qs = order === 2 ? [0.5] : [Math.SQRT1_2, Math.SQRT1_2];
	const low = cascade(frequencies, hertz, qs, false);
	const high = cascade(frequencies, hertz, qs, true);
	const sign = tweeterTurned ? -1 : 1;
	return {
		re: low.re.map((value, index) => value + sign * high.re[index]!),
		im: low.im.map((value, index) => value + sign * high.im[index]!),
	};
}

/**
C weighting as a factor on the amplitude.

@see IEC 61672-1, annex E: poles at 20.598997 and 12194.217 Hz, +0.0619 dB so that 1 kHz is 0 dB.
*/
export function weightingC(hertz: number): number {
	const low = 20.598997 ** 2;
	const high = 12194.217 ** 2;
	return ((high * hertz ** 2) / ((hertz ** 2 + low) * (hertz ** 2 + high))) * 10 ** (0.0619 / 20);
}
