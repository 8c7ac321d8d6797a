/** A complex response on a list of frequencies. */
export type Spectrum = {readonly re: Float64Array; readonly im: Float64Array};

export const emptySpectrum = (length: number): Spectrum => ({
	re: new Float64Array(length),
	im: new Float64Array(length),
});

/** Adds `part` times `gain` to `sum`. */
export function addTo(sum: Spectrum, part: Spectrum, gain = 1): void {
	for (let index = 0; index < sum.re.length; index++) {
		sum.re[index]! += gain * part.re[index]!;
		sum.im[index]! += gain * part.im[index]!;
	}
}

export function product(...factors: readonly Spectrum[]): Spectrum {
	const [first, ...others] = factors as [Spectrum, ...Spectrum[]];
	const re = Float64Array.from(first.re);
	const im = Float64Array.from(first.im);
	for (const other of others) {
		for (let index = 0; index < re.length; index++) {
			const a = re[index]!;
			const b = im[index]!;
			re[index] = a * other.re[index]! - b * other.im[index]!;
			im[index] = a * other.im[index]! + b * other.re[index]!;
		}
	}

	return {re, im};
}

export const magnitudeAt = ({re, im}: Spectrum, index: number): number => Math.hypot(re[index]!, im[index]!);

/** A pure delay, ms, with a gain. */
export function delayed(frequencies: ArrayLike<number>, delayMs: number, gain = 1): Spectrum {
	const spectrum = emptySpectrum(frequencies.length);
	for (let index = 0; index < frequencies.length; index++) {
		const angle = (-2 * Math.PI * frequencies[index]! * delayMs) / 1000;
		spectrum.re[index] = gain * Math.cos(angle);
		spectrum.im[index] = gain * Math.sin(angle);
	}

	return spectrum;
}
